import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { type MassSizes, type MassWash, massWashes } from '../../model/masses.ts';
import { withSize } from '../../model/smallest-sizes.ts';

/** A row of key presses is one decision: it is made once the keys rest this long. */
const restMs = 400;

export interface MovedSizes {
  /** As they stand while she moves a slider and until that is decided. */
  readonly sizes: MassSizes;
  move(wash: MassWash, mm: number): void;
  settle(): void;
}

/** The sizes while sliders are moved; `onDecide` is told once they rest, or when the page is left. */
export function useMovedSizes(
  decided: MassSizes,
  onDecide: (sizes: MassSizes) => void,
): MovedSizes {
  const moved = useSignal<{ readonly wash: MassWash; readonly sizes: MassSizes } | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const before = useRef(decided);
  before.current = decided;
  const told = useRef(onDecide);
  told.current = onDecide;
  const decide = (): void => {
    clearTimeout(timer.current);
    const next = moved.value?.sizes;
    moved.value = null;
    if (next && massWashes.some((wash) => next[wash] !== before.current[wash])) told.current(next);
  };
  useEffect(() => decide, []);
  return {
    sizes: moved.value?.sizes ?? decided,
    move(wash, mm) {
      // Another slider starts from what this one has come to.
      const from = moved.value && moved.value.wash !== wash ? moved.value.sizes : null;
      if (from) decide();
      clearTimeout(timer.current);
      moved.value = { wash, sizes: withSize(from ?? decided, wash, mm) };
    },
    settle() {
      clearTimeout(timer.current);
      timer.current = setTimeout(decide, restMs);
    },
  };
}
