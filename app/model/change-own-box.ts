import type { OwnBox } from './own-box.ts';
import type { Paint } from './paint.ts';

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

/** A paint of her own, new or changed, as one more revision. Where ticks count, a new one is ticked. */
export function withPaint(box: OwnBox, paint: Omit<Paint, 'revision'>): OwnBox {
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
