import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { valueOfLightness } from '../../colour/lightness.ts';
import { otherValueFrom, valueReachedWithin } from '../../limits.ts';
import type { Warning } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';
import { bandWord } from '../../words/reading-words.ts';
import { nameOfFamily, type PlanFacts } from '../plan-facts.ts';

export const nothingToPaint: Warning = {
  code: 'nothing-to-paint',
  text: 'Everything here is as light as the paper: there is nothing to paint. Choose a photo with darker shapes.',
};

/**
 * By how much her darks fall short, L*: `reached` is the darkest her palette's mixes give in one wash,
 * `wanted` what the darkest band asks for; null where that is near enough.
 */
export function darkWarning(reached: number, wanted: number, onePaint = false): Warning | null {
  if (reached - wanted <= valueReachedWithin) return null;
  const got = valueOfLightness(reached);
  const needed = valueOfLightness(wanted);
  return {
    code: 'dark-out-of-reach',
    text: `The darks want value ${needed.toFixed(1)} (10 is white), ${onePaint ? 'this paint reaches' : 'these paints reach'} ${got.toFixed(1)}: ${(got - needed).toFixed(1)} too light. ${onePaint ? 'Take a darker paint, or let the picture stay lighter.' : 'Add a deep blue or brown.'}`,
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
): Warning | null {
  const worst = worstMissed(
    slots,
    last,
    (target, got) => colourDifference(target, got) >= colourSlack,
  );
  if (worst === null) return null;
  if (facts.paints.length === 1) {
    return {
      code: 'colour-out-of-reach',
      text: "One paint can't give the colours of the photo: they come out clearly different. Let it be a painting in values, or allow more paints.",
    };
  }
  return {
    code: 'colour-out-of-reach',
    text: `The ${nameOfFamily(facts, worst)} can't be mixed from these paints: it comes out clearly different. Allow one more paint or add one of that hue.`,
  };
}

/** The same where she chose the colours: they are hers, only the value is looked at. */
export function valueWarning(
  facts: PlanFacts,
  slots: readonly Slot[],
  last: readonly Lab[],
): Warning | null {
  const worst = worstMissed(
    slots,
    last,
    (target, got) => Math.abs(got[0] - target[0]) >= otherValueFrom,
  );
  if (worst === null) return null;
  if (facts.paints.length === 1) {
    return {
      code: 'colour-out-of-reach',
      text: "This paint can't get all the values of the photo: choose a darker one, or let it stay lighter.",
    };
  }
  return {
    code: 'colour-out-of-reach',
    text: `The ${nameOfFamily(facts, worst)} can't get the values of the photo in this colour. Choose a darker paint for it, or let it stay lighter.`,
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

function nameOf(facts: PlanFacts, index: number): string {
  const slot = facts.slots[index];
  const value = bandWord(slot?.band ?? 1, facts.reading.bands.length);
  return `${value} ${facts.paints.length === 1 ? 'shapes' : nameOfFamily(facts, slot?.family ?? 0)}`;
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
): Warning | null {
  const missed = missedSlots(facts, last, reached).filter(({ beyond }) => !(beyond && darksTold));
  const [first] = missed;
  if (!first) return null;
  const names = missed
    .slice(0, named)
    .map(
      ({ index, values }) =>
        `the ${nameOf(facts, index)} ${Math.abs(values).toFixed(1)} too ${values > 0 ? 'light' : 'dark'}`,
    );
  const others = missed.length - names.length;
  const more = others > 0 ? ` and ${others} more` : '';
  const why = first.beyond
    ? 'No mix of these paints gets that dark: add a deeper paint, or let it stay lighter.'
    : 'They share a wash or a puddle with others: allow one more wash, or change their mix.';
  return {
    code: 'shape-out-of-reach',
    text: `Some shapes miss their value: ${names.join(', ')}${more} (in steps of ten). ${why}`,
  };
}
