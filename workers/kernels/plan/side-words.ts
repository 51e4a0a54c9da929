import { placeInWords } from '../../../app/model/place-in-words.ts';
import { alongEdge } from '../../../app/model/place-on-edge.ts';
import { familyName, type PlanFacts } from './plan-facts.ts';
import type { WashEdge } from './wash-edges.ts';

/** One side of a border by its colour: 'the dull green', 'the white'. */
export function sideOf(facts: PlanFacts, index: number): string {
  const slot = facts.slots[index];
  if (!slot) return 'the rest';
  return slot.reserve ? 'the white' : `the ${familyName(facts, slot.family)}`;
}

/** Both sides; of one colour they are told apart as the lighter and the darker. */
export function bothSides(facts: PlanFacts, own: number, other: number): [string, string] {
  const [one, two] = [sideOf(facts, own), sideOf(facts, other)];
  if (one !== two) return [one, two];
  const [a = 0, b = 0] = [own, other].map((i) => facts.slots[i]?.target[0]);
  const colour = one.replace(/^the /, '');
  return a < b
    ? [`the darker ${colour}`, `the lighter ${colour}`]
    : [`the lighter ${colour}`, `the darker ${colour}`];
}

/** Where on the sheet an edge lies, after its sides: ', upper left'. */
export const whereIs = ({ reading }: PlanFacts, { edge }: WashEdge): string =>
  `, ${placeInWords(alongEdge(edge, 0.5, reading.raster))}`;

/** The longest few of what was named, length by length; each name once. */
export function longestNamed(
  named: readonly (readonly [words: string, lengthMm: number])[],
  most: number,
): string[] {
  const sums = new Map<string, number>();
  for (const [words, lengthMm] of named) sums.set(words, (sums.get(words) ?? 0) + lengthMm);
  return [...sums]
    .sort((one, other) => other[1] - one[1])
    .slice(0, most)
    .map(([words]) => words);
}
