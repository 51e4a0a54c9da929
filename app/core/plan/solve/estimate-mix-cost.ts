import { differenceOf } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { lightnessOfSum, spectrumSize, weightY } from '../../colour/spectrum.ts';
import { drySurface } from '../../colour/surface.ts';
import { costOfUnsteadiness, tabulatedShares } from '../../limits.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { escapingOver } from '../../paint/layer.ts';
import type { DriedSheet } from './dried-sheet.ts';
import type { Goal } from './family-work.ts';
import { type PuddleOption, writeLabOfLayer } from './puddle-options.ts';

/** Values first: an L* of error counts this much on top of its part in CIEDE2000 (own). */
export const lightnessWeight = 0.6;

/** How badly a colour misses its target: CIEDE2000 and, once more, the difference in lightness. */
export function slotCost(target: Lab, lightness: number, a: number, b: number): number {
  const d = differenceOf(target[0], target[1], target[2], lightness, a, b);
  return d + lightnessWeight * Math.abs(lightness - target[0]);
}

// Imported bindings, copied once for the loop.
const toY = weightY;
const samples = spectrumSize;
const paper = defaultPaper;
const seenOver = escapingOver;
const { k2 } = drySurface;

/** L* of the option's layer number n, 0 or more, over a dried sheet; computing its Lab would take twice as long. */
function lightnessAt(
  { back, through, onPaper }: PuddleOption,
  n: number,
  under: Float64Array,
): number {
  if (under === paper) return onPaper[3 * n];
  let y = 0;
  for (let i = 0, offset = n * samples; i < samples; i++, offset++) {
    y += seenOver(back[offset], through[offset], under[i], k2) * toY[i];
  }
  return lightnessOfSum(y, drySurface);
}

const last = tabulatedShares.length - 1;
export const leastLoad = 0.02;

function judge(goal: Goal, lab: Float64Array, load: number, unsteady = 0): MixEstimate {
  let cost = 0;
  for (const { lab: target, weight } of goal.targets) {
    cost += weight * (slotCost(target, lab[0], lab[1], lab[2]) + unsteady);
  }
  return { cost, load, unsteady };
}

/** ln of the ratio of two neighbouring loads. */
const betweenShares = Math.log(tabulatedShares[1] / tabulatedShares[0]);

/** What it costs that an option is unsteady, where from one tabulated load to the next L* falls by so much. */
const unsteadiness = ({ sensitivity }: PuddleOption, fall: number): number =>
  (costOfUnsteadiness * sensitivity * Math.max(0, fall)) / betweenShares;

export interface MixEstimate {
  /** Area-weighted; Infinity where the puddle would lighten the dried sheet. */
  readonly cost: number;
  readonly load: number;
  /** Part of the cost by area: how unsteady the mix is at that load. */
  readonly unsteady: number;
}

/** Estimates the cost of mixes, hundreds of thousands of them, in one work space. */
export class MixEstimator {
  readonly #lighter = new Float64Array(3);
  readonly #darker = new Float64Array(3);

  /**
   * Estimates the cost of a mix on this dried sheet: interpolates between two tabulated loads to match the goal's
   * L*, and takes no more than `mostLoad`. The cost is Infinity where the mix would lighten the sheet.
   */
  estimate(
    option: PuddleOption,
    goal: Goal,
    dried: DriedSheet,
    mostLoad = Number.POSITIVE_INFINITY,
  ): MixEstimate {
    const driedLightness = dried.lab[0];
    if (goal.lightness >= driedLightness) return judge(goal, dried.lab, leastLoad);
    const under = dried.reflectance;
    const lighter = this.#lighter;
    const darker = this.#darker;
    const deepest = lightnessAt(option, last, under);
    if (deepest > goal.lightness) {
      if (option.coat > mostLoad) return this.#atMost(option, mostLoad, goal, dried);
      const load = option.coat;
      if (deepest > driedLightness) return { cost: Number.POSITIVE_INFINITY, load, unsteady: 0 };
      const above = this.#writeLayer(option, last - 1, dried, lighter);
      const below = this.#writeLayer(option, last, dried, darker);
      return judge(goal, darker, load, unsteadiness(option, above - below));
    }
    let low = -1;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (lightnessAt(option, middle, under) > goal.lightness) low = middle;
      else high = middle;
    }
    const above = this.#writeLayer(option, low, dried, lighter);
    const below = this.#writeLayer(option, high, dried, darker);
    const part = above > below ? (above - goal.lightness) / (above - below) : 1;
    for (let i = 0; i < 3; i++) {
      darker[i] = lighter[i] + part * (darker[i] - lighter[i]);
    }
    const to = tabulatedShares[high] * option.coat;
    const load = low < 0 ? Math.max(leastLoad, to * part) : to * 2 ** ((part - 1) / 2);
    return load > mostLoad
      ? this.#atMost(option, mostLoad, goal, dried)
      : judge(goal, darker, load, unsteadiness(option, above - below));
  }

  /** As much of a mix as is allowed, between two tabulated loads. */
  #atMost(option: PuddleOption, load: number, goal: Goal, dried: DriedSheet): MixEstimate {
    const place = Math.max(0, last + 2 * Math.log2(load / option.coat));
    const n = Math.min(last - 1, Math.floor(place));
    const lighter = this.#lighter;
    const darker = this.#darker;
    const above = this.#writeLayer(option, n, dried, lighter);
    const below = this.#writeLayer(option, n + 1, dried, darker);
    for (let i = 0; i < 3; i++) darker[i] = lighter[i] + (place - n) * (darker[i] - lighter[i]);
    if (darker[0] > dried.lab[0]) return { cost: Number.POSITIVE_INFINITY, load, unsteady: 0 };
    return judge(goal, darker, load, unsteadiness(option, above - below));
  }

  /** Writes the Lab of layer number n over the dried sheet to `out` (n = -1: of the sheet itself) and returns L*. */
  #writeLayer(option: PuddleOption, n: number, dried: DriedSheet, out: Float64Array): number {
    if (n < 0) {
      out.set(dried.lab);
      return dried.lab[0];
    }
    if (dried.reflectance === paper) {
      for (let c = 0; c < 3; c++) out[c] = option.onPaper[3 * n + c];
    } else {
      writeLabOfLayer(option, n, dried.reflectance, out);
    }
    return out[0];
  }
}
