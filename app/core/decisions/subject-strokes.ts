import { fewestPointsRound } from '../limits.ts';
import type { SubjectStroke } from '../reading/subject/subject.ts';
import { strokeInCut } from '../reference/photo-stroke.ts';
import type { Reference } from '../reference/reference.ts';
import type { Decision } from './painting.ts';
import { type DecisionOf, standingDecisions } from './standing-decisions.ts';

/**
 * What counts of her strokes: the last circle and the corrections after it; empty without a subject. A circle that
 * encloses nothing says that there is no subject any more.
 */
export function subjectDecisions(decisions: readonly Decision[]): readonly DecisionOf<'subject'>[] {
  const strokes = standingDecisions(decisions, 'subject');
  const circle = strokes.findLastIndex(({ mode }) => mode === 'circle');
  const enclosing = (strokes[circle]?.stroke.length ?? 0) >= fewestPointsRound;
  return enclosing ? strokes.slice(circle) : [];
}

/** Her strokes over the cut-out of a reference: the same ones whatever it is cut to. */
export const subjectStrokes = (
  decisions: readonly Decision[],
  cut: Pick<Reference, 'crop' | 'sheet'>,
): SubjectStroke[] =>
  subjectDecisions(decisions).map(({ mode, ...stroke }) => ({ mode, ...strokeInCut(cut, stroke) }));
