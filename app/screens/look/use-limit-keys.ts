import { useEffect, useRef } from 'preact/hooks';
import { movedLimit, roomOfLimit } from '../../model/band-limits.ts';

/** So long after the last key the reading follows, ms. */
const quietMs = 700;

function goal(limits: readonly number[], which: number, event: KeyboardEvent): number | null {
  const now = limits[which] ?? 0;
  const step = event.shiftKey ? 5 : 1;
  const [low, high] = roomOfLimit(limits, which);
  switch (event.key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return now + step;
    case 'ArrowLeft':
    case 'ArrowDown':
      return now - step;
    case 'Home':
      return low;
    case 'End':
      return high;
    default:
      return null;
  }
}

/** Moves a limit by keys; settles when they have been quiet for a moment, or the focus leaves. */
export function useLimitKeys(
  limits: readonly number[],
  onMove: (limits: readonly number[]) => void,
  onSettle: (limits: readonly number[]) => void,
) {
  const reached = useRef<readonly number[] | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const settling = useRef(onSettle);
  settling.current = onSettle;

  const settle = (): void => {
    clearTimeout(timer.current);
    if (reached.current) settling.current(reached.current);
    reached.current = null;
  };
  const leaving = useRef(settle);
  leaving.current = settle;
  useEffect(() => () => leaving.current(), []);

  return {
    keyDown: (which: number, event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const from = reached.current ?? limits;
      const to = goal(from, which, event);
      if (to === null) return;
      event.preventDefault();
      reached.current = movedLimit(from, which, to);
      onMove(reached.current);
      clearTimeout(timer.current);
      timer.current = setTimeout(settle, quietMs);
    },
    settle,
  };
}
