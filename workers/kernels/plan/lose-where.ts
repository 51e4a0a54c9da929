import type { Border } from '../../../app/model/reading.ts';
import type { PlanFacts } from './plan-facts.ts';
import { bothSides, longestNamed, whereIs } from './side-words.ts';
import { meetHere, type WashEdge } from './wash-edges.ts';

/** A border is named when this share of it is lost as measured, and this much of it, mm (own figures). */
const lostEnough = 0.6;
const shortestMm = 30;
const mostNamed = 3;

/** Length lost as measured: what she has decided is named by itself. */
function measuredLostMm(border: Border, decided: readonly WashEdge[]): number {
  const hers = decided
    .filter(({ kind, edge }) => kind === 'lost' && edge.a === border.a && edge.b === border.b)
    .reduce((sum, { edge }) => sum + edge.lengthMm, 0);
  return border.lengthMm * border.lost - hers;
}

/** Edges she wants lost into what this wash does not paint; empty where there are none. */
export function runOutWhere(facts: PlanFacts, decided: readonly WashEdge[]): string {
  const named = longestNamed(
    decided
      .filter(({ kind, inside }) => kind === 'lost' && !inside)
      .map((one) => {
        const [own, other] = bothSides(facts, one.own, one.other);
        return [
          `let ${own} run out into ${other}${whereIs(facts, one)}`,
          one.edge.lengthMm,
        ] as const;
      }),
    mostNamed,
  );
  return named.length > 0 ? `Lose the edge: ${named.join('; ')}.` : '';
}

/** What is painted in one go. */
export interface Merged {
  /** 'the dull green and the brown', the longest first, those she has decided before all others. */
  readonly pairs: readonly string[];
  /** How many of them she has decided. */
  readonly hers: number;
  /** Slots on either side. */
  readonly slots: readonly number[];
}

/**
 * Edges to lose between two shapes that are both painted in this wash: those she has decided, with where they
 * lie, then borders mostly lost in the photo. `slots` is the very list of the wash. Of the
 * `graded` runs of slots nothing is said here.
 */
export function mergedWhere(
  facts: PlanFacts,
  slots: readonly number[],
  decided: readonly WashEdge[],
  graded: readonly (readonly number[])[] = [],
): Merged {
  const lost = decided.filter(({ kind, inside }) => kind === 'lost' && inside);
  const hers = longestNamed(
    lost.map((one) => {
      const pair = bothSides(facts, one.own, one.other).join(' and ');
      return [`${pair}${whereIs(facts, one)}`, one.edge.lengthMm] as const;
    }),
    mostNamed,
  );
  const painted = new Set(slots);
  const measured = facts.reading.borders.filter((border) => {
    const { a, b } = border;
    const lostMm = measuredLostMm(border, decided);
    if (!painted.has(a) || !painted.has(b) || !meetHere(facts, slots, a, b)) return false;
    if (graded.some((run) => run.includes(a) && run.includes(b))) return false;
    return lostMm >= shortestMm && lostMm >= lostEnough * border.lengthMm;
  });
  const seen = longestNamed(
    measured.map((border) => [
      bothSides(facts, border.a, border.b).join(' and '),
      measuredLostMm(border, decided),
    ]),
    mostNamed - hers.length,
  );
  return {
    pairs: [...hers, ...seen],
    hers: hers.length,
    slots: [...lost.map(({ edge }) => edge), ...measured].flatMap(({ a, b }) => [a, b]),
  };
}
