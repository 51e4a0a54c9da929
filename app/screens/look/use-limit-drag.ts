import { useEffect, useRef } from 'preact/hooks';
import { lightnessOfValue } from '../../core/colour/munsell-value.ts';
import { movedLimit, nearestLimit, roomOfLimit } from './band-limits.ts';

interface LimitDrag {
  limits: readonly number[];
  /** While the finger moves; null where the browser took the gesture away. */
  onMove: (limits: readonly number[] | null) => void;
  /** When it is lifted. */
  onSettle: (limits: readonly number[]) => void;
}

type TrackEvent = PointerEvent & { readonly currentTarget: HTMLElement };

interface Held {
  readonly pointerId: number;
  readonly which: number;
  /** Limits as they were, and how far beside the limit the finger came down, L*. */
  readonly before: readonly number[];
  readonly beside: number;
  reached: readonly number[] | null;
}

function lightnessAt(event: TrackEvent): number {
  const { left, width } = event.currentTarget.getBoundingClientRect();
  return lightnessOfValue((10 * (event.clientX - left)) / width);
}

const toTenth = (lightness: number): number => Math.round(lightness * 10) / 10;

/**
 * Pointer handlers for the track under the limits: a finger anywhere on it takes the nearest one
 * along, so that two limits close together can both be taken.
 */
export function useLimitDrag(drag: LimitDrag) {
  const latest = useRef(drag);
  latest.current = drag;
  const held = useRef<Held | null>(null);

  const down = (event: TrackEvent): void => {
    if (event.button !== 0 || held.current) return;
    const { limits } = latest.current;
    const lightness = lightnessAt(event);
    const which = nearestLimit(limits, lightness);
    if (which < 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    event.preventDefault();
    event.currentTarget
      .querySelectorAll<HTMLElement>('[role=slider]')
      [which]?.focus({ preventScroll: true });
    const beside = lightness - (limits[which] as number);
    held.current = { pointerId: event.pointerId, which, before: limits, beside, reached: null };
  };

  const move = (event: TrackEvent): void => {
    const now = held.current;
    if (now?.pointerId !== event.pointerId) return;
    now.reached = movedLimit(now.before, now.which, toTenth(lightnessAt(event) - now.beside));
    latest.current.onMove(now.reached);
  };

  const up = (event: TrackEvent): void => {
    const now = held.current;
    if (now?.pointerId !== event.pointerId) return;
    held.current = null;
    if (now.reached) latest.current.onSettle(now.reached);
  };

  const cancel = (event: TrackEvent): void => {
    if (held.current?.pointerId !== event.pointerId) return;
    held.current = null;
    latest.current.onMove(null);
  };

  return {
    onPointerDown: down,
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: cancel,
    onLostPointerCapture: cancel,
  };
}

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
