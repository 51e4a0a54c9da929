import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { valueOfLightness } from '../../colour/lightness.ts';
import { otherValueFrom, valueReachedWithin } from '../../limits.ts';
import type { Slot } from '../../reading/slot.ts';
import { nameOfFamily, type PlanFacts } from '../plan-facts.ts';
import type { PlanWarning } from './plan-warning.ts';

export const nothingToPaint: PlanWarning = {
  code: 'nothing-to-paint',
  text: { say: 'reach/nothing' },
};

/**
 * By how much her darks fall short, L*: `reached` is the darkest her palette's mixes give in one wash,
 * `wanted` what the darkest band asks for; null where that is near enough.
 */
export function darkWarning(reached: number, wanted: number, onePaint = false): PlanWarning | null {
  if (reached - wanted <= valueReachedWithin) return null;
  return {
    code: 'dark-out-of-reach',
    text: {
      say: 'reach/darks',
      wanted: valueOfLightness(wanted),
      got: valueOfLightness(reached),
      onePaint,
    },
  };
}

/**
 * CIEDE2000 from which a painter sees another colour; the share of the sheet, and of its family, from which
 * it matters (own). A smaller slip comes of sharing puddles, not of the paints.
 */
const colourSlack = 10;
const leastShare = 0.03;
const leastOfFamily = 0.4;

/** The family that `misses` its target on most of the sheet, if that matters; or null. */
function worstMissed(
  slots: readonly Slot[],
  last: readonly Lab[],
  misses: (target: Lab, got: Lab) => boolean,
): number | null {
  const missed = new Map<number, number>();
  const painted = new Map<number, number>();
  for (const [i, slot] of slots.entries()) {
    const got = last[i];
    if (slot.reserve || !got) continue;
    painted.set(slot.family, (painted.get(slot.family) ?? 0) + slot.share);
    if (!misses(slot.target, got)) continue;
    missed.set(slot.family, (missed.get(slot.family) ?? 0) + slot.share);
  }
  const [worst] = [...missed]
    .filter(([family, share]) => share >= leastOfFamily * (painted.get(family) ?? 0))
    .sort((one, two) => two[1] - one[1]);
  return worst && worst[1] >= leastShare ? worst[0] : null;
}

/** The family whose planned colour is missed worst by area, or null. */
export function colourWarning(
  facts: PlanFacts,
  slots: readonly Slot[],
  last: readonly Lab[],
): PlanWarning | null {
  const worst = worstMissed(
    slots,
    last,
    (target, got) => colourDifference(target, got) >= colourSlack,
  );
  if (worst === null) return null;
  const onePaint = facts.paints.length === 1;
  return {
    code: 'colour-out-of-reach',
    text: onePaint
      ? { say: 'reach/colours-one-paint' }
      : { say: 'reach/colour', colour: nameOfFamily(facts, worst) },
  };
}

/** The same where she chose the colours: they are hers, only the value is looked at. */
export function valueWarning(
  facts: PlanFacts,
  slots: readonly Slot[],
  last: readonly Lab[],
): PlanWarning | null {
  const worst = worstMissed(
    slots,
    last,
    (target, got) => Math.abs(got[0] - target[0]) >= otherValueFrom,
  );
  if (worst === null) return null;
  const onePaint = facts.paints.length === 1;
  return {
    code: 'colour-out-of-reach',
    text: onePaint
      ? { say: 'reach/values-one-paint' }
      : { say: 'reach/values', colour: nameOfFamily(facts, worst) },
  };
}

/** So many are named. */
const named = 3;

interface Missed {
  readonly index: number;
  readonly share: number;
  /** Munsell values; above 0 too light. */
  readonly values: number;
  /** No wash of these paints is that dark. */
  readonly beyond: boolean;
}

/** Painted slots that miss their value, the largest first. `reached`: darkest wash of the paints, L*. */
function missedSlots({ slots }: PlanFacts, last: readonly Lab[], reached: number): Missed[] {
  return slots
    .flatMap(({ reserve, share, target }, index): Missed[] => {
      const got = last[index]?.[0];
      if (reserve || share <= 0 || got === undefined) return [];
      if (Math.abs(got - target[0]) <= valueReachedWithin) return [];
      const values = valueOfLightness(got) - valueOfLightness(target[0]);
      return [{ index, share, values, beyond: values > 0 && target[0] < reached }];
    })
    .sort((one, two) => two.share - one.share);
}

/**
 * Shapes whose value no wash reaches, and is not said of the darks as a whole (`darksTold`). Null where every
 * shape gets within 5 L* of its value.
 */
export function shapeWarning(
  facts: PlanFacts,
  last: readonly Lab[],
  reached: number,
  darksTold: boolean,
): PlanWarning | null {
  const missed = missedSlots(facts, last, reached).filter(({ beyond }) => !(beyond && darksTold));
  const [first] = missed;
  if (!first) return null;
  const shapes = missed.slice(0, named).map(({ index, values }) => {
    const slot = facts.slots[index];
    return { band: slot.band, colour: nameOfFamily(facts, slot.family), values };
  });
  return {
    code: 'shape-out-of-reach',
    text: {
      say: 'reach/shapes',
      shapes,
      count: facts.reading.bands.length,
      more: missed.length - shapes.length,
      beyond: first.beyond,
    },
  };
}
