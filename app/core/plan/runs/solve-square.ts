import { seenDifference } from '../../colour/ciede2000.ts';
import { type Spectrum, spectrumSize } from '../../colour/spectrum.ts';
import {
  type MixSpectra,
  type PaintSpectra,
  reflectanceOver,
  writeLayerSample,
} from '../../paint/layer.ts';
import { writeSeenLayer } from '../../paint/seen-layer.ts';

/**
 * Values first, more so than where mixes are chosen: what a wash still lacks here no later one mends. An L* of error
 * counts so much on top of its part in the visible difference (own).
 */
export const runningLightness = 1;

/** An L* by which a wash would lighten what lies under it counts so much. */
const lighteningWeight = 5;

const mostSteps = 10;
const [firstDamping, mostDamping] = [0.05, 50];
/** Amounts change by no more than this in one step, ml/m2. */
const longestStep = 4;

/** K and S per ml/m2 of a puddle. */
type Puddle = Pick<MixSpectra, 'K' | 'S'>;

/** What lies under a wash in one square: 36 samples inside the surface, and its L*. */
export interface Underneath {
  readonly reflectance: Float64Array;
  readonly lightness: number;
}

/**
 * Finds how much of one or two puddles to lay in a square: the amounts, at least 0 and together at most `most` ml/m2,
 * whose dry colour comes nearest to the target. Damped least squares (Levenberg 1944, Marquardt 1963) on the visible
 * difference, with slopes by differences. One work space for all squares of a plan.
 */
export class SquareSolver {
  readonly #kx = new Float64Array(spectrumSize);
  readonly #sx = new Float64Array(spectrumSize);
  readonly #lab = new Float64Array(3);
  readonly #misfit = new Float64Array(5);
  readonly #next = new Float64Array(5);
  readonly #slopes = [new Float64Array(5), new Float64Array(5)] as const;
  /** Amounts found, ml/m2, and the squared misfit they leave. */
  readonly amounts = new Float64Array(2);
  cost = 0;

  /** Writes the colour of so much of the puddles, mixed where they meet, over what lies under them. */
  writeColour(
    [{ K, S }, second]: readonly Puddle[],
    one: number,
    two: number,
    underneath: Float64Array,
    out: Float64Array,
  ): void {
    const kx = this.#kx;
    const sx = this.#sx;
    for (let i = 0; i < spectrumSize; i++) {
      kx[i] = one * K[i];
      sx[i] = one * S[i];
    }
    if (second && two > 0) {
      for (let i = 0; i < spectrumSize; i++) {
        kx[i] = kx[i] + two * second.K[i];
        sx[i] = sx[i] + two * second.S[i];
      }
    }
    writeSeenLayer(kx, sx, underneath, out);
  }

  #judge(
    puddles: readonly Puddle[],
    one: number,
    two: number,
    underneath: Underneath,
    target: ArrayLike<number>,
    seen: Float64Array,
    out: Float64Array,
  ): number {
    const lab = this.#lab;
    this.writeColour(puddles, one, two, underneath.reflectance, lab);
    const [dl, da, db] = [lab[0] - target[0], lab[1] - target[1], lab[2] - target[2]];
    for (let r = 0; r < 3; r++)
      out[r] = seen[3 * r] * dl + seen[3 * r + 1] * da + seen[3 * r + 2] * db;
    out[3] = runningLightness * dl;
    out[4] = lighteningWeight * Math.max(0, lab[0] - underneath.lightness);
    let sum = 0;
    for (let r = 0; r < 5; r++) sum += out[r] * out[r];
    return sum;
  }

  /** Fills `amounts` and `cost`; begins at what stands in `amounts`. One or two puddles. */
  solve(
    puddles: readonly Puddle[],
    underneath: Underneath,
    target: readonly [number, number, number],
    most: number,
  ): void {
    const both = puddles.length > 1;
    const seen = seenDifference(target);
    const amounts = this.amounts;
    const misfit = this.#misfit;
    const [first, second] = this.#slopes;
    if (!both) amounts[1] = 0;
    let cost = this.#judge(puddles, amounts[0], amounts[1], underneath, target, seen, misfit);
    let damping = firstDamping;
    for (let step = 0; step < mostSteps; step++) {
      const slopeOf = (n: number, out: Float64Array): void => {
        const by = Math.max(0.01, 0.03 * amounts[n]);
        const one = amounts[0] + (n === 0 ? by : 0);
        const two = amounts[1] + (n === 1 ? by : 0);
        this.#judge(puddles, one, two, underneath, target, seen, out);
        for (let r = 0; r < 5; r++) out[r] = (out[r] - misfit[r]) / by;
      };
      slopeOf(0, first);
      if (both) slopeOf(1, second);
      const better = this.#descend(puddles, underneath, target, seen, most, cost, damping, both);
      if (!better) break;
      damping = better.damping;
      const gain = cost - better.cost;
      cost = better.cost;
      if (gain < 0.002 * cost + 1e-4) break;
    }
    this.cost = cost;
  }

  #descend(
    puddles: readonly Puddle[],
    underneath: Underneath,
    target: readonly [number, number, number],
    seen: Float64Array,
    most: number,
    cost: number,
    from: number,
    both: boolean,
  ): { cost: number; damping: number } | null {
    const { amounts } = this;
    const misfit = this.#misfit;
    const [first, second] = this.#slopes;
    let [aa, ab, bb, ga, gb] = [0, 0, 0, 0, 0];
    for (let r = 0; r < 5; r++) {
      aa += first[r] * first[r];
      ga -= first[r] * misfit[r];
      if (!both) continue;
      ab += first[r] * second[r];
      bb += second[r] * second[r];
      gb -= second[r] * misfit[r];
    }
    for (let damping = from; damping <= mostDamping; damping *= 5) {
      const [a, b] = [aa * (1 + damping) + 1e-3, bb * (1 + damping) + 1e-3];
      let one = ga / a;
      let two = 0;
      if (both) {
        const divisor = a * b - ab * ab;
        one = (ga * b - gb * ab) / divisor;
        two = (gb * a - ga * ab) / divisor;
        // An amount that is at nothing and would go below leaves the other to itself.
        if (amounts[0] <= 0 && one < 0) [one, two] = [0, gb / b];
        else if (amounts[1] <= 0 && two < 0) [one, two] = [ga / a, 0];
      }
      const held = (value: number): number => Math.min(longestStep, Math.max(-longestStep, value));
      let x = Math.max(0, amounts[0] + held(one));
      let y = Math.max(0, amounts[1] + held(two));
      if (x + y > most) [x, y] = [(x * most) / (x + y), (y * most) / (x + y)];
      const next = this.#judge(puddles, x, y, underneath, target, seen, this.#next);
      if (next >= cost) continue;
      amounts[0] = x;
      amounts[1] = y;
      misfit.set(this.#next);
      return { cost: next, damping: Math.max(1e-3, damping / 4) };
    }
    return null;
  }
}

/**
 * Reflectance of so much of one or two puddles, mixed where they meet, over what lies there; `out` may be that. Of a
 * dry brush paint covers only a share: specks of what is under it show, their light adds by area.
 */
export function writeLayers(
  puddles: readonly PaintSpectra[],
  one: number,
  two: number,
  underneath: Spectrum,
  out: Float64Array,
  pair: Float64Array,
  covers = 1,
): void {
  const [first, second] = puddles;
  for (let i = 0; i < spectrumSize; i++) {
    let k = one * first.K[i];
    let s = one * first.S[i];
    if (second && two > 0) {
      k += two * second.K[i];
      s += two * second.S[i];
    }
    writeLayerSample(k, s, pair, 0);
    out[i] =
      covers * reflectanceOver(pair[0], pair[1], underneath[i]) + (1 - covers) * underneath[i];
  }
}
