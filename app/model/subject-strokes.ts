import { longSideShare, pointInCut } from './cut-point.ts';
import type { Decision } from './painting.ts';
import type { Reference } from './reference.ts';
import type { SubjectStroke } from './subject.ts';

type SubjectDecision = Extract<Decision, { kind: 'subject' }>;

/** Fewer points enclose nothing: a circle of so few says that there is no subject any more. */
const fewestInCircle = 3;

/** What counts of her strokes: the last circle and the corrections after it; empty without a subject. */
export function subjectDecisions(decisions: readonly Decision[]): readonly SubjectDecision[] {
  const undone = new Set(decisions.map((decision) => decision.undoes));
  const strokes = decisions.filter(
    (decision): decision is SubjectDecision =>
      decision.kind === 'subject' && !undone.has(decision.id),
  );
  const circle = strokes.findLastIndex(({ mode }) => mode === 'circle');
  const enclosing = (strokes[circle]?.stroke.length ?? 0) >= fewestInCircle;
  return enclosing ? strokes.slice(circle) : [];
}

/** The last of her strokes that is not taken back, whether or not it made a subject; else undefined. */
export function lastSubjectDecision(decisions: readonly Decision[]): SubjectDecision | undefined {
  const undone = new Set(decisions.map((decision) => decision.undoes));
  return decisions.findLast(
    (decision): decision is SubjectDecision =>
      decision.kind === 'subject' && !undone.has(decision.id),
  );
}

/** Her strokes over the cut-out of a reference: the same ones whatever it is cut to. */
export function subjectStrokes(
  decisions: readonly Decision[],
  { crop, sheet }: Pick<Reference, 'crop' | 'sheet'>,
): SubjectStroke[] {
  const shape = sheet.widthMm / sheet.heightMm;
  const perCut = 1 / longSideShare(crop, shape);
  return subjectDecisions(decisions).map(({ mode, stroke, brush }) => ({
    mode,
    path: stroke.map((point) => pointInCut(point, crop, shape)),
    brush: brush * perCut,
  }));
}
