import type { Lab } from '../../colour/lab.ts';
import { largestAccentCm2 } from '../../limits.ts';
import { butterFrom, creamFrom } from '../../paint/consistency.ts';
import type { Slot } from '../../reading/slot.ts';
import type { WashBands } from '../plan-facts.ts';

/** What one strength of one wash is to become: one or more slots' targets, weighted by their area. */
export interface Goal {
  readonly targets: readonly { readonly lab: Lab; readonly weight: number }[];
  /** Area-weighted mean lightness of the targets, L*. */
  readonly lightness: number;
  /** True for a step on the way: no shape of this family is finished by it. */
  readonly isIntermediate: boolean;
}

function goalOf(
  targets: readonly { readonly lab: Lab; readonly weight: number }[],
  isIntermediate = false,
): Goal {
  const area = targets.reduce((all, { weight }) => all + weight, 0);
  const lightness = targets.reduce((all, { lab, weight }) => all + lab[0] * weight, 0) / area;
  return { targets, lightness, isIntermediate };
}

/** The bands of these slots that need paint, lightest first. */
export function paintedBands(slots: readonly Slot[]): number[] {
  const bands = new Set(slots.filter((slot) => !slot.reserve).map((slot) => slot.band));
  return [...bands].sort((a, b) => a - b);
}

/**
 * One wash a painted band, from light to dark; where there are more bands than washes the paper bears
 * (R9), the lightest adjoining ones share: one puddle, two strengths.
 */
export function washBands(bands: readonly number[], mostWashes: number): WashBands[] {
  const count = Math.min(bands.length, mostWashes);
  const sizes = new Array<number>(count).fill(1);
  for (let extra = bands.length - count, i = 0; extra > 0; extra--, i = (i + 1) % count) {
    sizes[i] = sizes[i] + 1;
  }
  let from = 0;
  return sizes.map((size, i) => {
    const group = bands.slice(from, from + size);
    from += size;
    const split = Math.floor(size / 2);
    return { wash: i + 1, weak: group.slice(0, split), full: group.slice(split) };
  });
}

/** What one wash has to do for one family. */
export interface WashGoal {
  readonly full: Goal;
  readonly weak: Goal | null;
  /** Load it may have at most, ml/m2. */
  readonly mostLoad: number;
}

/** One family of one passage through its washes: light to dark; it ends with its darkest shape. */
export interface FamilyWork {
  readonly family: number;
  readonly washes: readonly WashGoal[];
}

/** Weight of an intermediate target, relative to a final one: it only holds the wash in the picture's tone (own). */
const intermediateWeight = 0.05;
const intermediateChroma = 0.6;

type Target = { lab: Lab; weight: number };

const leastShare = 1e-6;

/** Ground and subject painted together share one mix per band and family: its target is the area-weighted mean. */
function meanTarget(slots: readonly Slot[]): Target {
  const weights = slots.map(({ share }) => Math.max(share, leastShare));
  const weight = weights.reduce((sum, each) => sum + each, 0);
  const [only] = slots;
  if (only && slots.length === 1) return { lab: only.target, weight };
  const mean = (axis: 0 | 1 | 2): number =>
    slots.reduce((sum, { target }, i) => sum + weights[i] * target[axis], 0) / weight;
  return { lab: [mean(0), mean(1), mean(2)], weight };
}

/** One target per band and family, the lightest band first. */
function targetsIn(slots: readonly Slot[], bands: readonly number[]): Target[] {
  const alike = new Map<string, Slot[]>();
  for (const slot of slots) {
    if (!bands.includes(slot.band)) continue;
    const key = `${slot.band}/${slot.family}`;
    alike.set(key, [...(alike.get(key) ?? []), slot]);
  }
  return [...alike.values()]
    .sort(([one], [other]) => (one?.band ?? 0) - (other?.band ?? 0))
    .map(meanTarget);
}

/** The largest load, of two decimals, that is still under a limit. */
const below = (limit: number): number => Math.ceil(100 * limit - 1) / 100;

/**
 * How thick a wash may be, ml/m2: the first no thicker than milk, later ones no thicker than cream, but for the last
 * strokes of a family where they are accents. `covered` are its slots it goes over; neighbours count as one shape.
 */
function mostLoadOf(isFirst: boolean, isLast: boolean, covered: readonly Slot[]): number {
  if (isFirst) return below(creamFrom);
  const largestMm2 = covered.reduce((sum, slot) => sum + slot.largestMm2, 0);
  const accents = isLast && largestMm2 <= 100 * largestAccentCm2;
  return accents ? Number.POSITIVE_INFINITY : below(butterFrom);
}

/**
 * The work of one family. `slots` are its painted slots, `all` the painted slots of its passage:
 * where the family has no shape in a wash's bands but darker ones later, that wash still goes over it, in
 * the tone the wash has elsewhere.
 */
export function familyWork(
  family: number,
  slots: readonly Slot[],
  all: readonly Slot[],
  bands: readonly WashBands[],
): FamilyWork {
  const darkest = slots.reduce((most, slot) => Math.max(most, slot.band), 0);
  const washes: WashGoal[] = [];
  for (const { full, weak } of bands) {
    const lightest = weak[0] ?? full[0] ?? 0;
    if (lightest > darkest) break;
    const thin = targetsIn(slots, weak);
    const strong = targetsIn(slots, full);
    const later = slots.filter((slot) => slot.band > (full.at(-1) ?? 0));
    const covered = slots.filter((slot) => slot.band >= lightest);
    const mostLoad = mostLoadOf(washes.length === 0, later.length === 0, covered);
    if (strong.length > 0) {
      washes.push({ full: goalOf(strong), weak: thin.length > 0 ? goalOf(thin) : null, mostLoad });
    } else if (later.length === 0) {
      // Nothing darker: the thin strength is all this family gets.
      washes.push({ full: goalOf(thin), weak: null, mostLoad });
    } else {
      const intermediate = goalOf([intermediateFor(later, targetsIn(all, full))], true);
      washes.push({ full: intermediate, weak: thin.length > 0 ? goalOf(thin) : null, mostLoad });
    }
  }
  return { family, washes };
}

function intermediateFor(later: readonly Slot[], elsewhere: readonly Target[]): Target {
  const next = later.reduce((one, two) => (two.target[0] > one.target[0] ? two : one));
  const { lightness } = goalOf(elsewhere);
  const area = later.reduce((sum, slot) => sum + slot.share, 0);
  const [dark, a, b] = next.target;
  return {
    lab: [Math.max(lightness, dark), a * intermediateChroma, b * intermediateChroma],
    weight: intermediateWeight * Math.max(area, 1e-6),
  };
}
