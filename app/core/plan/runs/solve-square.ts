import { writeSeenDifference } from '../../colour/ciede2000.ts';
import { type Spectrum, spectrumSize } from '../../colour/spectrum.ts';
import { CoarseLayers } from '../../paint/coarse-layers.ts';
import type { MixSpectra, PaintSpectra } from '../../paint/layer.ts';
import { layerOver, writeSeenLayer } from '../../paint/seen-layer.ts';

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
/** Where the amounts have moved by more than this part of them, the colour is looked at anew with all its samples. */
const farFrom = 0.25;
const mostLooks = 3;

const held = (value: number): number => Math.min(longestStep, Math.max(-longestStep, value));

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
 * difference. Where it begins the colour is looked at with all samples, how it changes from there with half of them.
 * One work space for all squares of a plan.
 */
export class SquareSolver {
  readonly #kx = new Float64Array(spectrumSize);
  readonly #sx = new Float64Array(spectrumSize);
  readonly #lab = new Float64Array(3);
  /** By how much the coarse colours are off. */
  readonly #off = new Float64Array(3);
  readonly #misfit = new Float64Array(5);
  readonly #next = new Float64Array(5);
  readonly #slopes = [new Float64Array(5), new Float64Array(5)] as const;
  readonly #trial = new Float64Array(2);
  readonly #seen = new Float64Array(9);
  #puddles: readonly Puddle[] = [];
  #layers = new CoarseLayers([]);
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

  /** The squared misfit of what was looked at last, its parts in `out`. */
  #judge(
    underneath: Underneath,
    target: ArrayLike<number>,
    seen: Float64Array,
    out: Float64Array,
  ): number {
    const off = this.#off;
    const { lab } = this.#layers;
    const lightness = lab[0] + off[0];
    const dl = lightness - target[0];
    const da = lab[1] + off[1] - target[1];
    const db = lab[2] + off[2] - target[2];
    for (let r = 0; r < 3; r++)
      out[r] = seen[3 * r] * dl + seen[3 * r + 1] * da + seen[3 * r + 2] * db;
    out[3] = runningLightness * dl;
    out[4] = lighteningWeight * Math.max(0, lightness - underneath.lightness);
    let sum = 0;
    for (let r = 0; r < 5; r++) sum += out[r] * out[r];
    return sum;
  }

  /** How the misfit moves with every puddle, where was looked last and left `misfit`. */
  #writeSlopes(seen: Float64Array, misfit: Float64Array): void {
    const { slopes } = this.#layers;
    for (let n = 0; 3 * n < slopes.length; n++) {
      const out = this.#slopes[n];
      const dl = slopes[3 * n];
      const da = slopes[3 * n + 1];
      const db = slopes[3 * n + 2];
      for (let r = 0; r < 3; r++)
        out[r] = seen[3 * r] * dl + seen[3 * r + 1] * da + seen[3 * r + 2] * db;
      out[3] = runningLightness * dl;
      out[4] = misfit[4] > 0 ? lighteningWeight * dl : 0;
    }
  }

  /** Fills `amounts` and `cost`; begins at what stands in `amounts`. One or two puddles. */
  solve(
    puddles: readonly Puddle[],
    underneath: Underneath,
    target: readonly [number, number, number],
    most: number,
  ): void {
    if (puddles !== this.#puddles) {
      this.#puddles = puddles;
      this.#layers = new CoarseLayers(puddles);
    }
    this.#layers.ground = underneath.reflectance;
    const seen = this.#seen;
    writeSeenDifference(target, seen);
    const { amounts } = this;
    if (puddles.length < 2) amounts[1] = 0;
    let steps = mostSteps;
    for (let look = 0; look < mostLooks; look++) {
      const x = amounts[0];
      const y = amounts[1];
      steps = this.#solveFrom(underneath, target, seen, most, steps);
      const moved = Math.abs(amounts[0] - x) + Math.abs(amounts[1] - y);
      if (steps === 0 || moved <= farFrom * (x + y)) return;
    }
  }

  /** As `solve`, by how colours change from where it begins; the steps that are left. */
  #solveFrom(
    underneath: Underneath,
    target: readonly [number, number, number],
    seen: Float64Array,
    most: number,
    steps: number,
  ): number {
    const { amounts } = this;
    const layers = this.#layers;
    const misfit = this.#misfit;
    const lab = this.#lab;
    this.writeColour(this.#puddles, amounts[0], amounts[1], underneath.reflectance, lab);
    layers.look(amounts);
    for (let c = 0; c < 3; c++) this.#off[c] = lab[c] - layers.lab[c];
    let cost = this.#judge(underneath, target, seen, misfit);
    let damping = firstDamping;
    let left = steps;
    for (; left > 0; left--) {
      this.#writeSlopes(seen, misfit);
      const better = this.#descend(underneath, target, seen, most, cost, damping);
      if (!better) break;
      damping = better.damping;
      const gain = cost - better.cost;
      cost = better.cost;
      if (gain < 0.002 * cost + 1e-4) break;
    }
    this.cost = cost;
    return left;
  }

  #descend(
    underneath: Underneath,
    target: readonly [number, number, number],
    seen: Float64Array,
    most: number,
    cost: number,
    from: number,
  ): { cost: number; damping: number } | null {
    const { amounts } = this;
    const both = this.#puddles.length > 1;
    const misfit = this.#misfit;
    const trial = this.#trial;
    const [first, second] = this.#slopes;
    let aa = 0;
    let ab = 0;
    let bb = 0;
    let ga = 0;
    let gb = 0;
    for (let r = 0; r < 5; r++) {
      aa += first[r] * first[r];
      ga -= first[r] * misfit[r];
      if (!both) continue;
      ab += first[r] * second[r];
      bb += second[r] * second[r];
      gb -= second[r] * misfit[r];
    }
    for (let damping = from; damping <= mostDamping; damping *= 5) {
      const a = aa * (1 + damping) + 1e-3;
      const b = bb * (1 + damping) + 1e-3;
      let one = ga / a;
      let two = 0;
      if (both) {
        const divisor = a * b - ab * ab;
        one = (ga * b - gb * ab) / divisor;
        two = (gb * a - ga * ab) / divisor;
        // An amount that is at nothing and would go below leaves the other to itself.
        if (amounts[0] <= 0 && one < 0) {
          one = 0;
          two = gb / b;
        } else if (amounts[1] <= 0 && two < 0) {
          one = ga / a;
          two = 0;
        }
      }
      let x = Math.max(0, amounts[0] + held(one));
      let y = Math.max(0, amounts[1] + held(two));
      const sum = x + y;
      if (sum > most) {
        x = (x * most) / sum;
        y = (y * most) / sum;
      }
      trial[0] = x;
      trial[1] = y;
      this.#layers.look(trial);
      const next = this.#judge(underneath, target, seen, this.#next);
      if (next >= cost) continue;
      amounts.set(trial);
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
    const under = underneath[i];
    const laid = layerOver(k, s, under);
    out[i] = covers === 1 ? laid : covers * laid + (1 - covers) * under;
  }
}
