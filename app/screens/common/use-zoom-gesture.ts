import type { Signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';
import {
  doubleTapped,
  panned,
  pinched,
  type Stage,
  type Zoom,
  zoomedAbout,
} from '../../model/picture-zoom.ts';

type On<E> = E & { readonly currentTarget: HTMLElement };

export function stageOf(frame: HTMLElement, ratio: number): Stage {
  return { width: frame.clientWidth, height: frame.clientHeight, ratio };
}

function placeOf({ currentTarget, clientX, clientY }: On<MouseEvent>): Point {
  const { left, top } = currentTarget.getBoundingClientRect();
  return [clientX - left, clientY - top];
}

const apart = ([x, y]: Point, [a, b]: Point): number => Math.hypot(x - a, y - b);

/** A finger that moves less has not moved; two taps so near and so soon are one double tap. */
const slipPx = 8;
const sameSpotPx = 40;
const doubleTapMs = 320;

interface ZoomGesture {
  zoom: Signal<Zoom>;
  ratio: number;
  /** Set while fingers or the mouse move the picture. */
  held: Signal<boolean>;
}

interface Began {
  readonly zoom: Zoom;
  readonly fingers: readonly Point[];
}

/** Fingers, mouse and wheel on a stage. A tap still reaches the picture; a drag or a pinch does not. */
export function useZoomGesture({ zoom, ratio, held }: ZoomGesture) {
  const fingers = useRef(new Map<number, Point>());
  const began = useRef<Began | null>(null);
  const lastTap = useRef<{ at: Point; ms: number } | null>(null);
  const moved = useRef(false);

  const beginAgain = (): void => {
    const now = [...fingers.current.values()];
    began.current = now.length ? { zoom: zoom.peek(), fingers: now } : null;
  };

  function follow(stage: Stage): Zoom | null {
    const from = began.current;
    const [a, b] = from?.fingers ?? [];
    const [nowA, nowB] = [...fingers.current.values()];
    if (!from || !a || !nowA) return null;
    if (b && nowB) return pinched(stage, from.zoom, [a, b], [nowA, nowB]);
    return panned(stage, from.zoom, [nowA[0] - a[0], nowA[1] - a[1]]);
  }

  function end(event: On<PointerEvent>): void {
    if (!fingers.current.delete(event.pointerId)) return;
    beginAgain();
    if (fingers.current.size === 0) held.value = false;
  }

  function tapped(event: On<PointerEvent>): void {
    const at = placeOf(event);
    const before = lastTap.current;
    const isSecond =
      before && event.timeStamp - before.ms < doubleTapMs && apart(before.at, at) < sameSpotPx;
    lastTap.current = isSecond ? null : { at, ms: event.timeStamp };
    if (isSecond) zoom.value = doubleTapped(stageOf(event.currentTarget, ratio), zoom.peek(), at);
  }

  return {
    onPointerDown(event: On<PointerEvent>) {
      if (event.button !== 0 || fingers.current.size >= 2) return;
      if (fingers.current.size === 0) moved.current = false;
      fingers.current.set(event.pointerId, placeOf(event));
      if (fingers.current.size === 2) moved.current = true;
      beginAgain();
    },
    onPointerMove(event: On<PointerEvent>) {
      const first = began.current?.fingers[0];
      if (!first || !fingers.current.has(event.pointerId)) return;
      const at = placeOf(event);
      if (!moved.current && apart(at, first) < slipPx) return;
      // Only now: a mouse held from its first press on would click the stage and not the picture.
      if (!moved.current) event.currentTarget.setPointerCapture(event.pointerId);
      moved.current = true;
      held.value = true;
      fingers.current.set(event.pointerId, at);
      zoom.value = follow(stageOf(event.currentTarget, ratio)) ?? zoom.peek();
    },
    onPointerUp(event: On<PointerEvent>) {
      if (!fingers.current.has(event.pointerId)) return;
      end(event);
      if (!moved.current) tapped(event);
    },
    onPointerCancel: end,
    onClickCapture(event: MouseEvent) {
      if (!moved.current || event.detail === 0) return;
      moved.current = false;
      event.preventDefault();
      event.stopPropagation();
    },
    onWheel(event: On<WheelEvent>) {
      if (zoom.peek().scale === 1 && event.deltaY > 0) return; // the page may scroll
      event.preventDefault();
      const factor = Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.002));
      const stage = stageOf(event.currentTarget, ratio);
      zoom.value = zoomedAbout(stage, zoom.peek(), placeOf(event), factor);
    },
  };
}
