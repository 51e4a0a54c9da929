import type { Lab } from '../../app/model/lab.ts';
import type { Paint } from '../../app/model/paint.ts';
import { colourDifference } from '../../workers/kernels/optics/colour-difference.ts';
import { defaultPaper } from '../../workers/kernels/optics/default-paper.ts';
import { labOfReflectance } from '../../workers/kernels/optics/lab-of-reflectance.ts';
import { mixSpectra } from '../../workers/kernels/optics/mix-spectra.ts';
import { layOver, paintLayer } from '../../workers/kernels/optics/paint-layer.ts';
import { bandCount } from '../../workers/kernels/optics/wavelengths.ts';
import { combinations } from '../../workers/kernels/palette/combinations.ts';
import { usualPaints } from '../../workers/kernels/palette/darkest-of.ts';
import { seededRandom } from './seeded-random.ts';

/** A colour to be mixed, and the paints there are. */
export interface MixCase {
  readonly target: Lab;
  readonly palette: readonly Paint[];
}

/** The best mix found: shares of the palette's paints in `members`, and CIEDE2000 to the target. */
export interface BestMix {
  readonly members: readonly number[];
  readonly parts: readonly number[];
  readonly difference: number;
}

const sheet = new Float64Array(bandCount);

function labOf(paints: readonly Paint[], parts: readonly number[], load: number): Lab {
  const { K, S } = mixSpectra(paints, parts);
  return labOfReflectance(layOver(paintLayer(K, S, load), defaultPaper, sheet));
}

/** Targets any painter might want: mixes of three paints of the whole box in any shares and strength. */
export function seededCases(count: number, seed: number, paints: number): MixCase[] {
  const random = seededRandom(seed);
  const some = (n: number): Paint[] => {
    const left = [...usualPaints];
    return Array.from(
      { length: n },
      () => left.splice(Math.floor(random() * left.length), 1)[0] as Paint,
    );
  };
  return Array.from({ length: count }, () => ({
    palette: some(paints),
    target: labOf(some(3), [random(), random(), random()], 0.4 * 2 ** (6 * random())),
  }));
}

const golden = (Math.sqrt(5) - 1) / 2;

/** Least CIEDE2000 of paints in these shares over the load: half octaves, then golden section. */
export function bestAt(paints: readonly Paint[], parts: readonly number[], target: Lab): number {
  const { K, S } = mixSpectra(paints, parts);
  const at = (x: number): number =>
    colourDifference(
      target,
      labOfReflectance(layOver(paintLayer(K, S, 2 ** x), defaultPaper, sheet)),
    );
  let middle = -4;
  let least = Number.POSITIVE_INFINITY;
  for (let x = -4; x <= 5; x += 0.5) {
    const own = at(x);
    if (own < least) [middle, least] = [x, own];
  }
  let low = middle - 0.5;
  let high = Math.min(5, middle + 0.5);
  for (let i = 0; i < 14; i++) {
    const one = high - golden * (high - low);
    const two = low + golden * (high - low);
    if (at(one) <= at(two)) high = two;
    else low = one;
  }
  return Math.min(least, at((low + high) / 2));
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

function* compositions(count: number, left: number): Generator<number[]> {
  if (count === 0) yield [];
  else
    for (let first = 1; first <= left - (count - 1); first++)
      for (const rest of compositions(count - 1, left - first)) yield [first, ...rest];
}

/** All whole-part mixes of up to three of the palette, sum at most `most`, one by one. */
export function bestWhole({ palette, target }: MixCase, most: number): BestMix {
  let best: BestMix = { members: [], parts: [], difference: Number.POSITIVE_INFINITY };
  for (const size of [1, 2, 3]) {
    for (const members of combinations(palette.length, size)) {
      const paints = members.map((n) => palette[n] as Paint);
      for (const parts of compositions(size, most)) {
        if (parts.reduce(divisor) !== 1) continue;
        const difference = bestAt(paints, parts, target);
        if (difference < best.difference) best = { members, parts, difference };
      }
    }
  }
  return best;
}

/** Any shares of any three: from every whole-part start of sum 4, the shares bettered by halving steps. */
export function bestContinuous({ palette, target }: MixCase): BestMix {
  let best: BestMix = { members: [], parts: [], difference: Number.POSITIVE_INFINITY };
  for (const members of combinations(palette.length, 3)) {
    const paints = members.map((n) => palette[n] as Paint);
    for (const start of [
      [1, 1, 1],
      [4, 1, 1],
      [1, 4, 1],
      [1, 1, 4],
    ]) {
      let shares = start.map((part) => part / start.reduce((a, b) => a + b));
      let difference = bestAt(paints, shares, target);
      for (let step = 0.25; step > 0.002; ) {
        let moved = false;
        for (const i of [0, 1, 2]) {
          for (const j of [0, 1, 2]) {
            const by = Math.min(step, shares[i] as number);
            if (i === j || by <= 0) continue;
            const next = shares.map((s, k) => (k === i ? s - by : k === j ? s + by : s));
            const own = bestAt(paints, next, target);
            if (own >= difference) continue;
            [shares, difference, moved] = [next, own, true];
          }
        }
        if (!moved) step /= 2;
      }
      if (difference < best.difference) best = { members, parts: shares, difference };
    }
  }
  return best;
}

/** The continuous mix with its shares rounded to eighths, judged anew: what searching directly saves. */
export function rounded({ palette, target }: MixCase, { members, parts }: BestMix): number {
  const eighths = parts.map((share) => Math.round(share * 8));
  return bestAt(
    members.map((n) => palette[n] as Paint),
    eighths,
    target,
  );
}
