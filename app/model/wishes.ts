import type { Decision } from './painting.ts';
import type { ReadingWishes } from './reading.ts';
import type { Reference } from './reference.ts';
import { subjectStrokes } from './subject-strokes.ts';
import type { PlanWishes } from './wash-plan.ts';

export interface PaletteWish {
  /** At most this many paints. */
  readonly n: number;
  readonly must: readonly string[];
  readonly exclude: readonly string[];
}

const usualPalette: PaletteWish = { n: 5, must: [], exclude: [] };

type Kind = Decision['kind'];

/** The last decision of some kinds that was not taken back. */
function last<K extends Kind>(
  decisions: readonly Decision[],
  ...kinds: readonly K[]
): Extract<Decision, { kind: K }> | undefined {
  const undone = new Set(decisions.map((decision) => decision.undoes));
  return decisions.findLast(
    (decision): decision is Extract<Decision, { kind: K }> =>
      (kinds as readonly Kind[]).includes(decision.kind) && !undone.has(decision.id),
  );
}

/** What she decided about the reading of that reference; the rest is proposed. */
export function readingWishes(
  decisions: readonly Decision[],
  reference: Pick<Reference, 'crop' | 'sheet'>,
): ReadingWishes {
  const values = last(decisions, 'bands', 'limits');
  const range = last(decisions, 'range');
  const subject = subjectStrokes(decisions, reference);
  return {
    ...(values?.kind === 'bands' && { bands: values.count }),
    ...(values?.kind === 'limits' && { limits: values.lightness }),
    ...(range && { range: range.mode }),
    ...(subject.length > 0 && { subject }),
  };
}

export const paletteWish = (decisions: readonly Decision[]): PaletteWish =>
  last(decisions, 'palette') ?? usualPalette;

/** What she decided about paints and plan. */
export function planWishes(decisions: readonly Decision[]): PlanWishes {
  const { n, must, exclude } = paletteWish(decisions);
  return { paletteSize: n, must, exclude };
}
