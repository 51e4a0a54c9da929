import type { Border } from '../../../app/model/reading.ts';
import type { PlanFacts } from './plan-facts.ts';
import { bothSides, longestNamed, whereIs } from './side-words.ts';
import { meetHere, type WashEdge } from './wash-edges.ts';

/** A border is named when this share of it is lost as measured, and this much of it, mm (own figures). */
const lostEnough = 0.6;
const shortestMm = 30;
const mostNamed = 3;

/** Both sides in one wash, or the painted one led out into the other. */
function howTo(facts: PlanFacts, own: number, other: number, inside: boolean, where = ''): string {
  const [one, two] = bothSides(facts, own, other);
  return inside
    ? `paint ${one} and ${two} in one go where they meet${where}`
    : `let ${one} run out into ${two}${where}`;
}

/** Length lost as measured: what she has decided is named by itself. */
function measuredLostMm(border: Border, decided: readonly WashEdge[]): number {
  const hers = decided
    .filter(({ kind, edge }) => kind === 'lost' && edge.a === border.a && edge.b === border.b)
    .reduce((sum, { edge }) => sum + edge.lengthMm, 0);
  return border.lengthMm * border.lost - hers;
}

/**
 * Which edges of a wash to lose: those she has decided first, with where they lie, then borders mostly
 * lost in the photo whose sides are both painted in it. Empty where there are none.
 */
export function loseWhere(
  facts: PlanFacts,
  slots: readonly number[],
  decided: readonly WashEdge[],
): string {
  const hers = longestNamed(
    decided
      .filter(({ kind }) => kind === 'lost')
      .map((one) => {
        const { own, other, inside, edge } = one;
        return [howTo(facts, own, other, inside, whereIs(facts, one)), edge.lengthMm] as const;
      }),
    mostNamed,
  );
  const painted = new Set(slots);
  const measured = facts.reading.borders.flatMap((border) => {
    const { a, b } = border;
    const lostMm = measuredLostMm(border, decided);
    if (!painted.has(a) || !painted.has(b) || !meetHere(facts, slots, a, b)) return [];
    if (lostMm < shortestMm || lostMm < lostEnough * border.lengthMm) return [];
    return [[howTo(facts, a, b, true), lostMm] as const];
  });
  const named = [...hers, ...longestNamed(measured, mostNamed - hers.length)];
  return named.length > 0 ? `Lose the edge: ${named.join('; ')}.` : '';
}
