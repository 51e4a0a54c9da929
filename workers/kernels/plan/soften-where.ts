import type { Border } from '../../../app/model/reading.ts';
import { crispOnWet } from './crisp-on-wet.ts';
import { runOutWhere } from './lose-where.ts';
import { outerBorders } from './outer-borders.ts';
import type { PlanFacts } from './plan-facts.ts';
import { bothSides, longestNamed, sideOf, whereIs } from './side-words.ts';
import { type WashEdge, washEdges } from './wash-edges.ts';

/** Shorter stretches are not worth a word, mm on the sheet. */
const shortestMm = 15;
/** A border is named when this share of it is soft, those apart that she has decided. */
const softEnough = 0.4;
const mostNamed = 3;

const against = (facts: PlanFacts, decided: WashEdge): readonly [string, number] => {
  const [one, two] = bothSides(facts, decided.own, decided.other);
  return [`${one} against ${two}${whereIs(facts, decided)}`, decided.edge.lengthMm];
};

/** Softness as measured: what she has decided is named by itself. */
function measuredSoftMm(border: Border, decided: readonly WashEdge[]): number {
  const hers = decided
    .filter(({ kind, edge }) => kind === 'soft' && edge.a === border.a && edge.b === border.b)
    .reduce((sum, { edge }) => sum + edge.lengthMm, 0);
  return border.lengthMm * border.soft - hers;
}

function softSentence(facts: PlanFacts, slots: readonly number[], decided: readonly WashEdge[]) {
  const hers = longestNamed(
    decided.filter(({ kind }) => kind === 'soft').map((one) => against(facts, one)),
    mostNamed,
  );
  const inside = new Set(slots);
  const measured = outerBorders(facts.reading, slots).flatMap((border) => {
    const softMm = measuredSoftMm(border, decided);
    if (softMm < shortestMm || softMm < softEnough * border.lengthMm) return [];
    const [own, other] = inside.has(border.a) ? [border.a, border.b] : [border.b, border.a];
    const one = sideOf(facts, own);
    const two = sideOf(facts, other);
    return [[one === two ? `within ${one}` : `${one} against ${two}`, softMm] as const];
  });
  const named = [...hers, ...longestNamed(measured, mostNamed - hers.length)];
  if (named.length === 0) return '';
  return `Where it looks soft, touch the edge with a clean, barely damp brush while it shines: ${named.join('; ')}.`;
}

/** Edges she wants sharp among the others; water would run over them. */
function crispSentence(facts: PlanFacts, decided: readonly WashEdge[], wet: boolean): string {
  const crisp = decided.filter(({ kind }) => kind === 'hard' || kind === 'found');
  const named = longestNamed(
    crisp.map((one) => against(facts, one)),
    mostNamed,
  );
  if (named.length === 0) return '';
  const stop = wet ? ' Stop the water short of them.' : '';
  return `Leave crisp: ${named.join('; ')}.${stop}`;
}

/**
 * What becomes of the edges of a wash, in words: which strokes to soften while they shine (R8), those she
 * has decided first, then the longest soft borders; which to leave crisp; which to let run out. Edges lost
 * inside the wash are a technique of their own (merging). Empty where nothing of it is to be done.
 * `slots` is the very list of the wash, `wet` where it goes on wetted paper: then also which edges to keep
 * from the water.
 */
export function softenWhere(facts: PlanFacts, slots: readonly number[], wet = false): string {
  const decided = washEdges(facts, slots);
  return [
    softSentence(facts, slots, decided),
    crispSentence(facts, decided, wet),
    wet ? crispOnWet(facts, slots, decided) : '',
    runOutWhere(facts, decided),
  ]
    .filter(Boolean)
    .join(' ');
}
