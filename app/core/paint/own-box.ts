import type { Paint, PaintCard } from './paint.ts';
import type { StrengthLesson } from './strength-corrections.ts';

/**
 * The paints she owns: ticks in the built-in list, and paints of her own. The same for all
 * paintings.
 */
export interface OwnBox {
  readonly schema: 2;
  /** Ids of what she owns; null until she has ticked anything: then `countsUnticked` says. */
  readonly owned: readonly string[] | null;
  /** Her own paints, every revision of them, oldest first; the last of an id counts. */
  readonly paints: readonly Paint[];
  /** Ids of own paints she has taken out of the box. */
  readonly gone: readonly string[];
  /** What her scraps told of the strength of paints, oldest first; missing: nothing. */
  readonly strengthLessons?: readonly StrengthLesson[];
  /** Ids of what she ticked under another name, until she has seen that it is called otherwise now. */
  readonly renamed?: readonly string[];
}

/** A box from before paints had a strength: optics of her own paints are under a plain floor. */
export type FormerBox = Omit<OwnBox, 'schema'> & { readonly schema: 1 };

export const emptyBox: OwnBox = { schema: 2, owned: null, paints: [], gone: [] };

const latest = ({ paints }: OwnBox): Paint[] => [
  ...new Map(paints.map((paint) => [paint.id, paint])).values(),
];

/** Her own paints as they are now. */
export const ownPaints = (box: OwnBox): Paint[] =>
  latest(box).filter(({ id }) => !box.gone.includes(id));

/** Her own paints that were taken out. */
export const paintsTakenOut = (box: OwnBox): Paint[] =>
  latest(box).filter(({ id }) => box.gone.includes(id));

/** What is ticked and there; null while nothing is. */
export function tickedPaints({ owned, gone }: OwnBox): readonly string[] | null {
  const there = owned?.filter((id) => !gone.includes(id)) ?? [];
  return there.length > 0 ? there : null;
}

export type Known = Pick<PaintCard, 'id' | 'provenance' | 'placeAmongOwned'>;

/** Until anything is ticked her own paints count as hers, and the built-in ones most boxes hold. */
export const countsUnticked = ({ provenance, placeAmongOwned }: Known): boolean =>
  provenance === undefined || placeAmongOwned !== undefined;

export const isOwned = (box: OwnBox, card: Known): boolean =>
  tickedPaints(box)?.includes(card.id) ?? countsUnticked(card);

const without = (ids: readonly string[], id: string): readonly string[] =>
  ids.filter((each) => each !== id);

/** Exactly these ticked; none: as before anything was. */
export const withTicks = (box: OwnBox, ids: readonly string[]): OwnBox => ({
  ...box,
  owned: ids.length > 0 ? ids : null,
});

/** Ticked or not ticked: 'I own it'. */
export function withTick(box: OwnBox, id: string, owns: boolean): OwnBox {
  const others = without(box.owned ?? [], id);
  return withTicks(box, owns ? [...others, id] : others);
}

/**
 * A paint of her own, new or changed, as one more revision. Where ticks count, a new one is ticked.
 */
export function withOwnPaint(box: OwnBox, paint: Omit<Paint, 'revision'>): OwnBox {
  const before = box.paints.filter(({ id }) => id === paint.id);
  const isNew = before.length === 0;
  const revision = Math.max(0, ...before.map((each) => each.revision)) + 1;
  return {
    ...box,
    paints: [...box.paints, { ...paint, revision }],
    owned: isNew && box.owned ? [...box.owned, paint.id] : box.owned,
  };
}

export const takenOut = (box: OwnBox, id: string): OwnBox => ({
  ...box,
  gone: [...without(box.gone, id), id],
});

export const putBack = (box: OwnBox, id: string): OwnBox => ({
  ...box,
  gone: without(box.gone, id),
});

/** She has seen that it is called otherwise now. */
export function withRenameSeen(box: OwnBox, id: string): OwnBox {
  const { renamed = [], ...others } = box;
  const left = without(renamed, id);
  return left.length > 0 ? { ...others, renamed: left } : others;
}
