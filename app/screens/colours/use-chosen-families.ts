import { useSignal } from '@preact/signals';
import type { Seen } from '../../state/seen.ts';

/** More than two can't be joined at once: a third takes the place of the first. */
const most = 2;

export interface ChosenFamilies {
  /** Ids of families of what is seen now. */
  readonly ids: readonly number[];
  toggle(id: number): void;
  clear(): void;
}

/** The families she has chosen. Their numbers hold for one reading only: a new one starts afresh. */
export function useChosenFamilies(seen: Seen | null): ChosenFamilies {
  const chosen = useSignal<{ readonly of: Seen | null; readonly ids: readonly number[] }>({
    of: null,
    ids: [],
  });
  const now = (): readonly number[] => (chosen.value.of === seen ? chosen.value.ids : []);
  const take = (ids: readonly number[]): void => {
    chosen.value = { of: seen, ids };
  };
  return {
    ids: now(),
    toggle: (id) => {
      const ids = now(); // as it is when touched: two touches may come before the next drawing
      take(ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id].slice(-most));
    },
    clear: () => take([]),
  };
}
