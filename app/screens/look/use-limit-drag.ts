import { useEffect, useRef } from 'preact/hooks';
import { arrowDirections, isShortcut } from '../../ui/pointer/stage-keys.ts';
import { placeInShares, usePointers } from '../../ui/pointer/use-pointers.ts';
import {
  lightnessAtShare,
  moveLimit,
  nearestPlace,
  roomOfLimit,
  shareBelow,
} from './band-limits.ts';

interface LimitDrag {
  /** Of the simplified lightness: 256 bins, L* x 2.55. */
  histogram: readonly number[];
  limits: readonly number[];
  /** While the finger moves; null where the browser took the gesture away. */
  onMove: (limits: readonly number[] | null) => void;
  /** When it is lifted. */
  onSettle: (limits: readonly number[]) => void;
}

interface Held {
  readonly which: number;
  /** Limits as they were, and how far beside the limit the finger came down, as a share of the strip. */
  readonly before: readonly number[];
  readonly beside: number;
  reached: readonly number[] | null;
}

const toTenth = (lightness: number): number => Math.round(lightness * 10) / 10;

/**
 * Pointer handlers for the strip: a finger anywhere on it takes the nearest border between two steps along, so that
 * two close together can both be taken.
 */
export function useLimitDrag({ histogram, limits, onMove, onSettle }: LimitDrag) {
  const held = useRef<Held | null>(null);
  const { handlers } = usePointers({
    most: 1,
    captures: true,
    placeOf: (event) => placeInShares(event, Number.POSITIVE_INFINITY),
    onDown(event, [share]) {
      const places = limits.map((limit) => shareBelow(histogram, limit));
      const which = nearestPlace(places, share);
      const place = places[which];
      if (place === undefined) return false;
      event.preventDefault();
      event.currentTarget
        .querySelectorAll<HTMLElement>('[role=slider]')
        [which]?.focus({ preventScroll: true });
      held.current = { which, before: limits, beside: share - place, reached: null };
      return true;
    },
    onMove(_event, [share]) {
      if (!held.current) return;
      const { before, which, beside } = held.current;
      const lightness = lightnessAtShare(histogram, share - beside);
      held.current.reached = moveLimit(before, which, toTenth(lightness));
      onMove(held.current.reached);
    },
    onUp() {
      const reached = held.current?.reached;
      held.current = null;
      if (reached) onSettle(reached);
    },
    onCancel() {
      held.current = null;
      onMove(null);
    },
  });
  return handlers;
}

/** So long after the last key the reading follows, ms. */
const quietMs = 700;

function limitAfterKey(
  limits: readonly number[],
  which: number,
  event: KeyboardEvent,
): number | null {
  const [low, high] = roomOfLimit(limits, which);
  if (event.key === 'Home') return low;
  if (event.key === 'End') return high;
  const direction = arrowDirections[event.key];
  if (!direction) return null;
  const [right, down] = direction;
  return (limits[which] ?? 0) + (event.shiftKey ? 5 : 1) * (right - down);
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
  const latestSettle = useRef(settle);
  latestSettle.current = settle;
  useEffect(() => () => latestSettle.current(), []);

  return {
    keyDown: (which: number, event: KeyboardEvent): void => {
      if (isShortcut(event)) return;
      const from = reached.current ?? limits;
      const to = limitAfterKey(from, which, event);
      if (to === null) return;
      event.preventDefault();
      reached.current = moveLimit(from, which, to);
      onMove(reached.current);
      clearTimeout(timer.current);
      timer.current = setTimeout(settle, quietMs);
    },
    settle,
  };
}
