import { writeLab } from '../optics/lab-of-reflectance.ts';
import { surfaceFloor } from '../optics/surface.ts';
import { bandCount } from '../optics/wavelengths.ts';
import type { Goal } from './goal.ts';
import { type Ground, writeWash } from './ground.ts';
import { leastLoad } from './look-at-puddle.ts';
import type { PuddleOption } from './puddle-option.ts';
import { slotCost } from './slot-cost.ts';

export const mostLoad = 32;

/** No wash may raise lightness; this much is rounding, L*. */
export const lightenSlack = 1e-6;

/** Three significant digits: finer than anyone mixes, coarse enough to print. */
export const roundedLoad = (load: number): number => Number(load.toPrecision(3));

const sheet = new Float64Array(bandCount);
const lab = new Float64Array(3);

/** Exact cost of a goal at one load; Infinity where the wash would lighten the ground. */
export function costAt(option: PuddleOption, load: number, goal: Goal, ground: Ground): number {
  writeWash(option, load, ground.reflectance, sheet);
  writeLab(sheet, surfaceFloor.dry, lab);
  const lightness = lab[0] as number;
  if (lightness > (ground.lab[0] as number) + lightenSlack) return Number.POSITIVE_INFINITY;
  let cost = 0;
  for (const { lab: target, weight } of goal.targets) {
    cost += weight * slotCost(target, lightness, lab[1] as number, lab[2] as number);
  }
  return cost;
}

const golden = (Math.sqrt(5) - 1) / 2;

/**
 * The load of least cost near a first guess (within a factor of 2), found by golden section on its
 * logarithm, rounded, and judged again after rounding. Load 0 and the bare ground's cost are not tried
 * here.
 */
export function bestLoad(
  option: PuddleOption,
  guess: number,
  goal: Goal,
  ground: Ground,
): { load: number; cost: number } {
  let low = Math.log(Math.max(leastLoad, guess / 2));
  let high = Math.log(Math.min(mostLoad, Math.max(guess * 2, leastLoad * 2)));
  const at = (x: number): number => costAt(option, Math.exp(x), goal, ground);
  let one = high - golden * (high - low);
  let two = low + golden * (high - low);
  let costOne = at(one);
  let costTwo = at(two);
  for (let i = 0; i < 18; i++) {
    if (costOne <= costTwo) {
      high = two;
      two = one;
      costTwo = costOne;
      one = high - golden * (high - low);
      costOne = at(one);
    } else {
      low = one;
      one = two;
      costOne = costTwo;
      two = low + golden * (high - low);
      costTwo = at(two);
    }
  }
  const load = Math.min(mostLoad, Math.max(leastLoad, roundedLoad(Math.exp((low + high) / 2))));
  return { load, cost: costAt(option, load, goal, ground) };
}
