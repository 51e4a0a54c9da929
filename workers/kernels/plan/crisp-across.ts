import type { PlanFacts, SolvedWash } from './plan-facts.ts';
import { bothSides, longestNamed } from './side-words.ts';

/** The line is kept between two colours where this share and length of it is crisp, mm (own figures). */
const crispEnough = 0.6;
const crispMm = 40;
const mostNamed = 2;

/**
 * Where ground and subject, painted together, meet crisply in two colours of one wash that no `later` one parts:
 * a sentence that says to stop there; empty where they do not.
 */
export function crispAcross(
  facts: PlanFacts,
  slots: readonly number[],
  later: readonly SolvedWash[],
): string {
  const { reading, slots: all, paints } = facts;
  // Of one paint there are no two colours.
  if (paints.length < 2) return '';
  const goesOn = new Set(later.flatMap((wash) => wash.slots));
  const ends = new Set(slots.filter((slot) => !goesOn.has(slot)));
  const named = longestNamed(
    reading.borders.flatMap(({ a, b, lengthMm, soft, lost }) => {
      const share = Math.max(0, 1 - soft - lost);
      const across = reading.slots[a]?.passage !== reading.slots[b]?.passage;
      const apart = ends.has(a) && ends.has(b) && all[a]?.family !== all[b]?.family;
      const crisp = share >= crispEnough && share * lengthMm >= crispMm;
      if (!across || !apart || !crisp) return [];
      return [[bothSides(facts, a, b).join(' and '), share * lengthMm] as const];
    }),
    mostNamed,
  );
  return named.length > 0
    ? `The line is crisp between ${named.join(', and between ')}: stop at it, and leave a hair of paper dry there.`
    : '';
}
