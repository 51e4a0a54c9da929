import { differenceOf } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import {
  bandCount,
  lightnessOfSum,
  surfaceFloor,
  weightY,
  writeLab,
} from '../../colour/spectrum.ts';
import type { DriedSheet } from './dried-sheet.ts';
import type { Goal } from './family-work.ts';
import { lookLoads, type PuddleOption } from './puddle-options.ts';

/** Values first: an L* of error counts this much on top of its part in CIEDE2000 (own figure). */
const lightnessWeight = 0.6;

/** How badly a colour misses its target: CIEDE2000 and, once more, the difference in lightness. */
export function slotCost(target: Lab, lightness: number, a: number, b: number): number {
  const d = differenceOf(target[0], target[1], target[2], lightness, a, b);
  return d + lightnessWeight * Math.abs(lightness - target[0]);
}

const sheet = new Float64Array(bandCount);
const lighter = new Float64Array(3);
const darker = new Float64Array(3);

// Read once, for the loop.
const toY = weightY;
const bands = bandCount;
const floor = surfaceFloor.dry;

/** L* of the option's layer number n, 0 or more, over the ground: `lookAt` without the colour, in half the time. */
function lightnessAt({ back, through }: PuddleOption, n: number, under: Float64Array): number {
  let y = 0;
  for (let i = 0, at = n * bands; i < bands; i++, at++) {
    const r = back[at];
    const t = through[at];
    const g = under[i];
    y += (r + (t * t * g) / Math.max(1 - r * g, 1e-12)) * toY[i];
  }
  return lightnessOfSum(y, floor);
}

/** Lab of the option's layer number n over the ground; n = -1 is the ground itself. */
function lookAt(option: PuddleOption, n: number, ground: DriedSheet, out: Float64Array): number {
  if (n < 0) {
    out.set(ground.lab);
    return ground.lab[0];
  }
  const { back, through } = option;
  const under = ground.reflectance;
  for (let i = 0, at = n * bands; i < bands; i++, at++) {
    const r = back[at];
    const t = through[at];
    const g = under[i];
    sheet[i] = r + (t * t * g) / Math.max(1 - r * g, 1e-12);
  }
  writeLab(sheet, floor, out);
  return out[0];
}

/** Filled by `lookAtPuddle`: no object per look, there are hundreds of thousands. */
export const mixEstimate = { cost: 0, load: 0 };

const last = lookLoads.length - 1;
export const leastLoad = 0.02;

function judge(goal: Goal, lab: Float64Array, load: number): void {
  let cost = 0;
  for (const { lab: target, weight } of goal.targets) {
    cost += weight * slotCost(target, lab[0], lab[1], lab[2]);
  }
  mixEstimate.cost = cost;
  mixEstimate.load = load;
}

/**
 * About how near a puddle gets to a goal over a ground, at the load that gives the goal's lightness,
 * read off between two look loads. Writes cost (area-weighted) and load to `look`; the cost is
 * Infinity where the puddle would lighten the ground: no wash may.
 */
export function estimateMixCost(option: PuddleOption, goal: Goal, ground: DriedSheet): void {
  const groundLightness = ground.lab[0];
  if (goal.lightness >= groundLightness) {
    judge(goal, ground.lab, leastLoad);
    return;
  }
  const under = ground.reflectance;
  const deepest = lightnessAt(option, last, under);
  if (deepest > goal.lightness) {
    lookAt(option, last, ground, darker);
    judge(goal, darker, lookLoads[last]);
    if (deepest > groundLightness) mixEstimate.cost = Number.POSITIVE_INFINITY;
    return;
  }
  let low = -1;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (lightnessAt(option, middle, under) > goal.lightness) low = middle;
    else high = middle;
  }
  const above = lookAt(option, low, ground, lighter);
  const below = lookAt(option, high, ground, darker);
  const part = above > below ? (above - goal.lightness) / (above - below) : 1;
  for (let i = 0; i < 3; i++) {
    darker[i] = lighter[i] + part * (darker[i] - lighter[i]);
  }
  const to = lookLoads[high];
  const load = low < 0 ? Math.max(leastLoad, to * part) : to * 2 ** ((part - 1) / 2);
  judge(goal, darker, load);
}
