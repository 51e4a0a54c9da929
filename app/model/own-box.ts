import type { Paint } from './paint.ts';

/** The paints she owns: ticks in the built-in list, and paints of her own. The same for all paintings. */
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
