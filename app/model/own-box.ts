import type { Paint } from './paint.ts';
import type { PlanWishes } from './wash-plan.ts';

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

/** Her own paints as they are now. */
export function ownPaints({ paints, gone }: OwnBox): Paint[] {
  const latest = new Map(paints.map((paint) => [paint.id, paint]));
  return [...latest.values()].filter(({ id }) => !gone.includes(id));
}

export const isOwned = ({ owned }: OwnBox, id: string): boolean => owned?.includes(id) ?? true;

/** What the search for a palette may choose from. */
export function boxWishes(box: OwnBox): Pick<PlanWishes, 'box' | 'ownPaints'> {
  const own = ownPaints(box);
  return {
    ...(box.owned && { box: box.owned.filter((id) => !box.gone.includes(id)) }),
    ...(own.length > 0 && { ownPaints: own }),
  };
}
