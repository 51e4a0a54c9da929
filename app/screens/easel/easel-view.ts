import type { Step } from '../../model/wash-plan.ts';

/** What the picture at the easel can show; each but the band also in grey. */
export const easelViews = ['where', 'reference', 'band', 'sheet', 'edges'] as const;
export type EaselView = (typeof easelViews)[number];

/** Name of the layer that shows a view. */
export const easelLayer = (view: EaselView, grey: boolean): string =>
  grey && view !== 'band' ? `${view}-grey` : view;

export const viewWords: Record<EaselView, string> = {
  where: 'where to paint',
  reference: 'the reference',
  band: 'one value alone',
  sheet: 'how it should look now',
  edges: 'its edges',
};

type Placed = Pick<Step, 'kind' | 'slots'>;

/** A step that touches nothing in particular, or all of it, has no 'where' to show. */
export const hasPlace = ({ kind, slots }: Placed): boolean =>
  slots.length > 0 && kind !== 'last-look' && kind !== 'transfer';

/** What is shown of a step: the view asked for, or what comes nearest to it. */
export function shownView(asked: EaselView, step: Placed): EaselView {
  if (asked !== 'where' || hasPlace(step)) return asked;
  if (step.kind === 'transfer') return 'edges'; // what is to be drawn
  return step.kind === 'dry' || step.kind === 'last-look' ? 'sheet' : 'reference';
}

/** The bands a step is about; where it is about none, the lightest not yet painted, else the darkest. */
export function bandsOf(
  { bands }: Pick<Step, 'bands'>,
  all: readonly number[],
  done: ReadonlySet<number>,
): ReadonlySet<number> {
  if (bands.length > 0) return new Set(bands);
  const next = all.find((band) => !done.has(band)) ?? all.at(-1);
  return new Set(next === undefined ? [] : [next]);
}
