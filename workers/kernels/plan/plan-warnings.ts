import type { Lab } from '../../../app/model/lab.ts';
import { valueOfLightness } from '../../../app/model/munsell-value.ts';
import type { Warning } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { colourDifference } from '../optics/colour-difference.ts';
import { familyName, type PlanFacts } from './plan-facts.ts';

export const nothingToPaint: Warning = {
  code: 'nothing-to-paint',
  text: 'Everything here is as light as the paper: there is nothing to paint. Choose a photo with darker shapes.',
};

/** Less than this much too light is not worth a word, L*. */
const darkSlack = 3;

/**
 * By how much her darks fall short, L*: `reached` is the darkest her palette's mixes give in one wash,
 * `wanted` what the darkest band asks for; null where that is near enough.
 */
export function darkWarning(reached: number, wanted: number, onePaint = false): Warning | null {
  if (reached - wanted <= darkSlack) return null;
  const got = valueOfLightness(reached);
  const needed = valueOfLightness(wanted);
  return {
    code: 'dark-out-of-reach',
    text: `The darks want value ${needed.toFixed(1)} (10 is white), ${onePaint ? 'this paint reaches' : 'these paints reach'} ${got.toFixed(1)}: ${(got - needed).toFixed(1)} too light. ${onePaint ? 'Take a darker paint, or let the picture stay lighter.' : 'Add a deep blue or brown.'}`,
  };
}

/**
 * CIEDE2000 from which a painter sees another colour; the share of the sheet, and of its family, from which
 * it matters (own figures). A smaller slip comes of sharing puddles, not of the paints.
 */
const colourSlack = 10;
const leastShare = 0.03;
const leastOfFamily = 0.4;

/** From so many L* a value is clearly another (design, comparison). */
const valueSlack = 8;

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
    text: `The ${familyName(facts, worst)} can't be mixed from these paints: it comes out clearly different. Allow one more paint or add one of that hue.`,
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
    (target, got) => Math.abs(got[0] - target[0]) >= valueSlack,
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
    text: `The ${familyName(facts, worst)} can't get the values of the photo in this colour. Choose a darker paint for it, or let it stay lighter.`,
  };
}
