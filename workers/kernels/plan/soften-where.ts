import type { Border } from '../../../app/model/reading.ts';
import { outerBorders } from './outer-borders.ts';
import { familyName, type PlanFacts } from './plan-facts.ts';

/** Shorter stretches are not worth a word, mm on the sheet. */
const shortestMm = 15;
const mostNamed = 3;

function sideOf(facts: PlanFacts, index: number): string {
  const slot = facts.slots[index];
  if (!slot) return 'the rest';
  return slot.reserve ? 'the white' : `the ${familyName(facts, slot.family)}`;
}

const softMm = (border: Border): number => border.lengthMm * border.soft;

/**
 * Which strokes of a wash to soften while they shine (R8), the longest soft borders first; empty
 * where none is soft.
 */
export function softenWhere(facts: PlanFacts, slots: readonly number[]): string {
  const inside = new Set(slots);
  const named = new Map<string, number>();
  for (const border of outerBorders(facts.reading, slots)) {
    if (border.soft < 0.4 || softMm(border) < shortestMm) continue;
    const [own, other] = inside.has(border.a) ? [border.a, border.b] : [border.b, border.a];
    const one = sideOf(facts, own);
    const two = sideOf(facts, other);
    const words = one === two ? `within ${one}` : `${one} against ${two}`;
    named.set(words, (named.get(words) ?? 0) + softMm(border));
  }
  const longest = [...named].sort((x, y) => y[1] - x[1]).slice(0, mostNamed);
  if (longest.length === 0) return '';
  const where = longest.map(([words]) => words).join('; ');
  return `Where it looks soft, touch the edge with a clean, barely damp brush while it shines: ${where}.`;
}
