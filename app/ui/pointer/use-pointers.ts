import { useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';

/** A pointer's event at the element that follows it. */
export type StageEvent = PointerEvent & { readonly currentTarget: HTMLElement };

type MouseOnStage = MouseEvent & { readonly currentTarget: HTMLElement };

/** Where a pointer is, CSS px from the upper left corner of the element. */
export function placeInPx({ currentTarget, clientX, clientY }: MouseOnStage): Point {
  const { left, top } = currentTarget.getBoundingClientRect();
  return [clientX - left, clientY - top];
}

/** The same as a share of the element's sides, held inside 0..1 or at most so far beyond. */
export function placeInShares(
  { currentTarget, clientX, clientY }: MouseOnStage,
  beyond = 0,
  element: Element = currentTarget,
): Point {
  const { left, top, width, height } = element.getBoundingClientRect();
  const held = (share: number): number => Math.min(1 + beyond, Math.max(-beyond, share));
  return [held((clientX - left) / width), held((clientY - top) / height)];
}

interface PointerGesture {
  /** How many pointers are followed at once. */
  most: 1 | 2;
  /** Whether the element keeps them from the first touch on, wherever they go. */
  captures: boolean;
  placeOf: (event: StageEvent) => Point;
  /** A pointer came down; false where it is not to be followed. */
  onDown: (event: StageEvent, place: Point) => boolean;
  /** One came down beyond those that are followed. */
  onOneMore?: () => void;
  onMove: (event: StageEvent, place: Point) => void;
  /** One moves that is not followed: a mouse before its button is pressed. */
  onHover?: (event: StageEvent) => void;
  /** A pointer was lifted. */
  onUp: (event: StageEvent, place: Point) => void;
  /** The browser took a pointer away. */
  onCancel: () => void;
}

export interface Pointers {
  /** Where the pointers are that are followed, by id, in the order in which they came down. */
  readonly places: Map<number, Point>;
  readonly handlers: {
    onPointerDown(event: StageEvent): void;
    onPointerMove(event: StageEvent): void;
    onPointerUp(event: StageEvent): void;
    onPointerCancel(event: StageEvent): void;
    onLostPointerCapture(event: StageEvent): void;
  };
}

/** Follows fingers, pens and the mouse's main button from where they come down on an element. */
export function usePointers(gesture: PointerGesture): Pointers {
  const latest = useRef(gesture);
  latest.current = gesture;
  const pointers = useRef<Pointers | null>(null);
  pointers.current ??= followPointers(() => latest.current);
  return pointers.current;
}

function followPointers(gesture: () => PointerGesture): Pointers {
  const places = new Map<number, Point>();
  const cancel = ({ pointerId }: StageEvent): void => {
    if (places.delete(pointerId)) gesture().onCancel();
  };
  return {
    places,
    handlers: {
      onPointerDown(event) {
        if (event.button !== 0) return;
        const { most, captures, placeOf, onDown, onOneMore } = gesture();
        if (places.size >= most) return onOneMore?.();
        const place = placeOf(event);
        places.set(event.pointerId, place);
        if (!onDown(event, place)) places.delete(event.pointerId);
        else if (captures) event.currentTarget.setPointerCapture(event.pointerId);
      },
      onPointerMove(event) {
        const { placeOf, onMove, onHover } = gesture();
        if (!places.has(event.pointerId)) return onHover?.(event);
        const place = placeOf(event);
        places.set(event.pointerId, place);
        onMove(event, place);
      },
      onPointerUp(event) {
        if (places.delete(event.pointerId)) gesture().onUp(event, gesture().placeOf(event));
      },
      onPointerCancel: cancel,
      onLostPointerCapture(event) {
        // What a child loses, since this element or the browser took it, is no end.
        if (event.target === event.currentTarget) cancel(event);
      },
    },
  };
}
