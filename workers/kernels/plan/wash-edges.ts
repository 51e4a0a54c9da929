import type { Edge, EdgeKind } from '../../../app/model/edge.ts';
import { kindOnSheet } from '../../../app/model/kind-on-sheet.ts';
import type { PlanFacts } from './plan-facts.ts';

/** An edge she has decided, as it concerns one wash. */
export interface WashEdge {
  readonly edge: Edge;
  /** What it is to be. */
  readonly kind: EdgeKind;
  /** The slot on its side that is painted in this wash, and the other one. */
  readonly own: number;
  readonly other: number;
  /** Both sides are painted in it. */
  readonly inside: boolean;
}

/**
 * Whether a wash that paints both slots is the one in which they come to meet: no later wash paints both;
 * and of one colour they part only in the last wash that paints either.
 */
export function meetHere(
  { passages, slots: all }: PlanFacts,
  slots: readonly number[],
  a: number,
  b: number,
): boolean {
  const sameFamily = all[a]?.family === all[b]?.family;
  for (const { washes } of passages) {
    const now = washes.findIndex((wash) => wash.slots === slots);
    if (now < 0) continue;
    return !washes.slice(now + 1).some((wash) => {
      const [hasA, hasB] = [wash.slots.includes(a), wash.slots.includes(b)];
      return sameFamily ? hasA || hasB : hasA && hasB;
    });
  }
  return true;
}

/**
 * Decided edges this wash makes: it paints one side of them, or its two sides come to meet in it. `slots` is
 * the very list of the wash.
 */
export function washEdges(facts: PlanFacts, slots: readonly number[]): WashEdge[] {
  const inside = new Set(slots);
  return (facts.reading.edges ?? []).flatMap((edge): WashEdge[] => {
    const { a, b, wish } = edge;
    if (!wish || !(inside.has(a) || inside.has(b))) return [];
    const both = inside.has(a) && inside.has(b);
    if (both && !meetHere(facts, slots, a, b)) return [];
    const [own, other] = inside.has(a) ? [a, b] : [b, a];
    return [{ edge, kind: kindOnSheet(edge), own, other, inside: both }];
  });
}
