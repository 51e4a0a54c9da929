import { outerBorders } from './outer-borders.ts';
import type { PlanFacts } from './plan-facts.ts';
import { bothSides, longestNamed, sideOf } from './side-words.ts';
import type { WashEdge } from './wash-edges.ts';

/** Two colours are kept apart when this share and length of where they meet is hard, mm (own figures). */
const crispEnough = 0.6;
const crispMm = 40;
const mostNamed = 3;
/** From this share on one of their borders is named as soft. */
const softEnough = 0.4;

interface Meeting {
  readonly words: string;
  readonly hardMm: number;
  readonly lengthMm: number;
}

/**
 * The crisp edges of a wash on wet paper, where the water has to stop: colours that meet mostly hard at its
 * border, none of whose borders is soft or decided by her. Empty where there are none.
 */
export function crispOnWet(
  facts: PlanFacts,
  slots: readonly number[],
  decided: readonly WashEdge[],
): string {
  const hers = new Set(decided.map(({ edge }) => `${edge.a}/${edge.b}`));
  const inside = new Set(slots);
  const meetings = new Map<string, Meeting>();
  const soft = new Set<string>();
  for (const { a, b, lengthMm, ...border } of outerBorders(facts.reading, slots)) {
    const [own, other] = inside.has(a) ? [a, b] : [b, a];
    const key = [sideOf(facts, own), sideOf(facts, other)].sort().join('/');
    if (hers.has(`${a}/${b}`) || border.soft >= softEnough) soft.add(key);
    const before = meetings.get(key);
    meetings.set(key, {
      words: before?.words ?? bothSides(facts, own, other).join(' against '),
      hardMm: (before?.hardMm ?? 0) + lengthMm * Math.max(0, 1 - border.soft - border.lost),
      lengthMm: (before?.lengthMm ?? 0) + lengthMm,
    });
  }
  const named = longestNamed(
    [...meetings].flatMap(([key, { words, hardMm, lengthMm }]) =>
      soft.has(key) || hardMm < crispMm || hardMm < crispEnough * lengthMm
        ? []
        : [[words, hardMm] as const],
    ),
    mostNamed,
  );
  return named.length > 0
    ? `These edges stay crisp, so stop the water short of them: ${named.join('; ')}.`
    : '';
}
