import { widestLightnessGap } from '../../colour/ciede2000.ts';
import { DifferenceBound } from '../../colour/difference-bound.ts';
import { costOfAnotherPaint, costOfUnsteadiness, mixSizes, searchShares } from '../../limits.ts';
import { defaultPaperLab } from '../../paint/colour-of-washes.ts';
import { wholeParts } from '../../paint/mix.ts';
import { GroupMixer, labSteps, type MixGroup } from '../library/group-mixer.ts';
import type { PaletteTarget } from './palette-targets.ts';

/** A colour to reach, with what makes the search for it quick. */
interface SoughtColour {
  readonly target: PaletteTarget;
  readonly near: DifferenceBound;
}

const soughtColour = (target: PaletteTarget): SoughtColour => ({
  target,
  near: new DifferenceBound(target.lab),
});

// Imported bindings, copied once for the loop.
const perUnit = 1 / labSteps;
/** ln of the ratio of two neighbouring shares. */
const betweenShares = Math.log(searchShares[1] / searchShares[0]);
const shares = searchShares.length;
const paper = defaultPaperLab;

/** Place among a mix's shares, from `first` on, from which it is as dark as `wanted` (as kept); -1 where it never is. */
function placeAsDark(lightness: Int16Array, first: number, wanted: number): number {
  let [low, high] = [-1, shares - 1];
  if (lightness[first + high] > wanted) return -1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (lightness[first + middle] > wanted) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Writes L*, a*, b* of every mix of the group with as much water as gives it that lightness, interpolated between the
 * shares kept of it and the paper, or as a full coat where that is not dark enough; by how much L* falls there from
 * one share to the next; and its chroma.
 */
function writeMixesAt(l: number, { lightness, chroma }: MixGroup, out: Float64Array): void {
  const [paperL, paperA, paperB] = paper;
  const wanted = l * labSteps;
  for (let first = 0, to = 0; first < lightness.length; first += shares, to += mixFigures) {
    const place = placeAsDark(lightness, first, wanted);
    const n = place < 0 ? first + shares - 1 : first + place;
    out[to] = lightness[n] * perUnit;
    out[to + 1] = chroma[2 * n] * perUnit;
    out[to + 2] = chroma[2 * n + 1] * perUnit;
    const lower = Math.max(n, first + 1);
    out[to + 3] = Math.max(0, lightness[lower - 1] - lightness[lower]) * perUnit;
    if (place >= 0) {
      const lighter = place === 0 ? paperL : lightness[n - 1] * perUnit;
      const a = place === 0 ? paperA : chroma[2 * n - 2] * perUnit;
      const b = place === 0 ? paperB : chroma[2 * n - 1] * perUnit;
      const part = lighter > out[to] ? Math.min(1, (lighter - l) / (lighter - out[to])) : 1;
      out[to] = lighter + part * (out[to] - lighter);
      out[to + 1] = a + part * (out[to + 1] - a);
      out[to + 2] = b + part * (out[to + 2] - b);
    }
    out[to + 4] = Math.sqrt(out[to + 1] * out[to + 1] + out[to + 2] * out[to + 2]);
  }
}

/** L* of the darkest full coat. */
function leastLightness({ lightness }: MixGroup): number {
  let least = 100 * labSteps;
  for (let n = shares - 1; n < lightness.length; n += shares) least = Math.min(least, lightness[n]);
  return least * perUnit;
}

/** What it costs that a mix is unsteady where L* falls by so much from one share to the next. */
const unsteadiness = (sensitivity: number, fall: number): number =>
  (costOfUnsteadiness * sensitivity * fall) / betweenShares;

/** Figures written of every mix. */
const mixFigures = 5;

const mostWays = Math.max(...mixSizes.map((size) => wholeParts(size).length));

/**
 * Finds what mixes of one group after the other cost: least CIEDE2000 of them to each colour, each thinned to its
 * lightness, plus what it costs that the mix is unsteady and `costOfAnotherPaint` for each paint beyond the first.
 */
export class GroupCosts {
  readonly #sought: readonly SoughtColour[];
  readonly #mixer = new GroupMixer([]);
  readonly #mixes = new Float64Array(mixFigures * mostWays);
  readonly #bounds = new Float64Array(mostWays);
  readonly #likely = new Int32Array(mostWays);

  constructor(targets: readonly PaletteTarget[]) {
    this.#sought = targets.map(soughtColour);
  }

  /**
   * Writes the costs that are less than `limits` to out[offset ..], one of each target. A mix is passed over only where
   * a lower bound of the difference rules it out: the quick one first, which most do not pass.
   */
  write(group: MixGroup, limits: Float32Array, out: Float32Array, offset: number): void {
    const extra = costOfAnotherPaint * (group.members.length - 1);
    const fullest = leastLightness(group);
    let mixedAt = Number.NaN;
    for (let t = 0; t < this.#sought.length; t++) {
      const { target, near } = this.#sought[t];
      const [l] = target.lab;
      const limit = limits[t] - extra;
      if (limit <= 0 || fullest - l > widestLightnessGap(l, limit)) continue;
      if (l !== mixedAt) writeMixesAt(l, group, this.#mixes);
      mixedAt = l;
      const best = this.#leastOf(group, near, limit);
      if (best < limit) out[offset + t] = best + extra;
    }
  }

  /** Least cost of the mixes written, where it is less than `limit`. */
  #leastOf(group: MixGroup, near: DifferenceBound, limit: number): number {
    const [mixes, bounds, likely] = [this.#mixes, this.#bounds, this.#likely];
    const ways = group.sensitivity.length;
    let best = limit;
    let [count, nearest] = [0, 0];
    for (let n = 0, i = 0; n < ways; n++, i += mixFigures) {
      const bound = near.leastSquared(mixes[i], mixes[i + 1], mixes[i + 2], mixes[i + 4]);
      if (bound > limit * limit) continue;
      bounds[n] = bound;
      if (count > 0 && bound < bounds[likely[nearest]]) nearest = count;
      likely[count++] = n;
    }
    // The likeliest first: it rules out most of the others.
    for (let turn = count > 0 ? -1 : 0; turn < count; turn++) {
      const n = likely[turn < 0 ? nearest : turn];
      if (bounds[n] > best * best || turn === nearest) continue;
      const i = n * mixFigures;
      const known = unsteadiness(group.sensitivity[n], mixes[i + 3]);
      // How unsteady a mix is takes far longer to work out than whether it may matter.
      const left = Number.isNaN(known) ? best : best - known;
      if (left <= 0 || bounds[n] > left * left) continue;
      const off = near.differenceUpTo(left, mixes[i], mixes[i + 1], mixes[i + 2]);
      if (off >= left) continue;
      const found = off + unsteadiness(this.#mixer.sensitivityOf(group, n), mixes[i + 3]);
      if (found < best) best = found;
    }
    return best;
  }
}
