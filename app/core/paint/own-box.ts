import type { Paint } from './paint.ts';

/**
 * The paints she owns: ticks in the built-in list, and paints of her own. The same for all
 * paintings.
 */
export interface OwnBox {
  readonly schema: 1;
  /** Ids of what she owns; null until she has ticked anything: then every paint known counts. */
  readonly owned: readonly string[] | null;
  /** Her own paints, every revision of them, oldest first; the last of an id counts. */
  readonly paints: readonly Paint[];
  /** Ids of own paints she has taken out of the box. */
  readonly gone: readonly string[];
}

export const emptyBox: OwnBox = { schema: 1, owned: null, paints: [], gone: [] };

const latest = ({ paints }: OwnBox): Paint[] => [
  ...new Map(paints.map((paint) => [paint.id, paint])).values(),
];

/** Her own paints as they are now. */
export const ownPaints = (box: OwnBox): Paint[] =>
  latest(box).filter(({ id }) => !box.gone.includes(id));

/** Her own paints that were taken out. */
export const paintsTakenOut = (box: OwnBox): Paint[] =>
  latest(box).filter(({ id }) => box.gone.includes(id));

/** What is ticked and there; null while nothing is: then every paint known counts. */
export function tickedPaints({ owned, gone }: OwnBox): readonly string[] | null {
  const there = owned?.filter((id) => !gone.includes(id)) ?? [];
  return there.length > 0 ? there : null;
}

export const isOwned = (box: OwnBox, id: string): boolean =>
  tickedPaints(box)?.includes(id) ?? true;

const without = (ids: readonly string[], id: string): readonly string[] =>
  ids.filter((each) => each !== id);

/** Exactly these ticked; none: every paint known counts again. */
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

/** What the ticks mean for the plan: `ticked` null where nothing is ticked, of `all` paints. */
export function boxInWords(ticked: number | null, all: number): string {
  if (ticked === null) return `Nothing is ticked yet: all ${all} paints count as yours.`;
  if (ticked === 1)
    return 'One paint is ticked: a plan then has its values only, in this one colour. Tick a second for colour.';
  return `${ticked} of ${all} paints are ticked: plans choose from these.`;
}
