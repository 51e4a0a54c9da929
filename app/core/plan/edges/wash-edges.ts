import { type Place, placeOf } from '../../raster/size.ts';
import { type Edge, type EdgeKind, kindOnSheet } from '../../reading/edges/edge.ts';
import { alongEdge } from '../../reading/edges/place-on-edge.ts';
import type { ShapeSaid } from '../../words/plan/names.ts';
import { saidKey } from '../../words/plan/said.ts';
import { nameOfFamily, type PlanFacts } from '../plan-facts.ts';

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
 * True if this is the last wash that paints both slots, the one whose edge stays visible. Slots of one family are
 * separated by the last wash that paints either of them.
 */
export function meetHere(
  { passages, slots: all }: PlanFacts,
  slots: readonly number[],
  a: number,
  b: number,
): boolean {
  const sameFamily = all[a]?.family === all[b]?.family;
  for (const { washes } of passages) {
    const washIndex = washes.findIndex((wash) => wash.slots === slots);
    if (washIndex < 0) continue;
    return !washes.slice(washIndex + 1).some((wash) => {
      const [hasA, hasB] = [wash.slots.includes(a), wash.slots.includes(b)];
      return sameFamily ? hasA || hasB : hasA && hasB;
    });
  }
  return true;
}

/**
 * The decided edges this wash makes: it paints only one side, or it is the last wash that paints both. `slots` must be
 * the array of the wash itself: the wash is found by identity.
 */
export function washEdges(facts: PlanFacts, slots: readonly number[]): WashEdge[] {
  const inside = new Set(slots);
  const found: WashEdge[] = [];
  for (const edge of facts.reading.edges ?? []) {
    const { a, b, wish } = edge;
    if (!wish || !(inside.has(a) || inside.has(b))) continue;
    const both = inside.has(a) && inside.has(b);
    if (both && !meetHere(facts, slots, a, b)) continue;
    const [own, other] = inside.has(a) ? [a, b] : [b, a];
    found.push({ edge, kind: kindOnSheet(edge), own, other, inside: both });
  }
  return found;
}

/** One side of a border by its colour: 'the dull green', 'the white'. */
export function sideOf(facts: PlanFacts, index: number): ShapeSaid {
  const slot = facts.slots[index];
  if (!slot) return { say: 'shape/rest' };
  if (slot.reserve) return { say: 'shape/white' };
  return { say: 'shape/colour', colour: nameOfFamily(facts, slot.family) };
}

export const isSameShape = (one: ShapeSaid, two: ShapeSaid): boolean =>
  saidKey(one) === saidKey(two);

/** Both sides; of one colour they are told apart as the lighter and the darker. */
export function bothSides(
  facts: PlanFacts,
  own: number,
  other: number,
): { readonly one: ShapeSaid; readonly two: ShapeSaid } {
  const [one, two] = [sideOf(facts, own), sideOf(facts, other)];
  if (!isSameShape(one, two)) return { one, two };
  const [a = 0, b = 0] = [own, other].map((i) => facts.slots[i]?.target[0]);
  const [darker, lighter] = [
    { ...one, tone: 'darker' } as const,
    { ...one, tone: 'lighter' } as const,
  ];
  return a < b ? { one: darker, two: lighter } : { one: lighter, two: darker };
}

/** Where on the sheet an edge lies. */
export const placeOfEdge = ({ reading }: PlanFacts, { edge }: WashEdge): Place =>
  placeOf(alongEdge(edge, 0.5, reading.raster));

/** Adds up the lengths under each name and returns the names with the greatest length, each once. */
export function longestNamed<Named extends object>(
  named: readonly (readonly [name: Named, lengthMm: number])[],
  most: number,
): Named[] {
  const sums = new Map<string, [name: Named, lengthMm: number]>();
  for (const [name, lengthMm] of named) {
    const key = saidKey(name);
    sums.set(key, [sums.get(key)?.[0] ?? name, (sums.get(key)?.[1] ?? 0) + lengthMm]);
  }
  return [...sums.values()]
    .sort((one, other) => other[1] - one[1])
    .slice(0, most)
    .map(([name]) => name);
}
