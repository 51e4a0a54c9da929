import type { Signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import {
  doubleTapped,
  type PictureFrame,
  panned,
  pinched,
  wholePicture,
  type Zoom,
  zoomedAbout,
} from '../picture/picture-zoom.ts';

type On<E> = E & { readonly currentTarget: HTMLElement };

export function measureStage(frame: HTMLElement, ratio: number): PictureFrame {
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

  function follow(stage: PictureFrame): Zoom | null {
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
    if (isSecond)
      zoom.value = doubleTapped(measureStage(event.currentTarget, ratio), zoom.peek(), at);
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
      zoom.value = follow(measureStage(event.currentTarget, ratio)) ?? zoom.peek();
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
      const stage = measureStage(event.currentTarget, ratio);
      zoom.value = zoomedAbout(stage, zoom.peek(), placeOf(event), factor);
    },
  };
}

type StageKey = KeyboardEvent & { readonly currentTarget: HTMLElement };

const nearer = 1.4;
const stride = 60;
const ways: Record<string, Point> = {
  ArrowLeft: [stride, 0],
  ArrowRight: [-stride, 0],
  ArrowUp: [0, stride],
  ArrowDown: [0, -stride],
};

/**
 * Plus, minus, 0 and arrows while the picture has the focus. Arrows move it only where keys brought
 * the focus there: a pedal sends arrows too, and a finger that touched the picture left it focused.
 */
export function useZoomKeys(zoom: Signal<Zoom>, ratio: number) {
  const byTouch = useRef(false);

  function after(event: StageKey): Zoom | null {
    const stage = measureStage(event.currentTarget, ratio);
    const middle: Point = [stage.width / 2, stage.height / 2];
    if (event.key === '+' || event.key === '=')
      return zoomedAbout(stage, zoom.peek(), middle, nearer);
    if (event.key === '-') return zoomedAbout(stage, zoom.peek(), middle, 1 / nearer);
    if (event.key === '0') return wholePicture;
    const way = ways[event.key];
    if (!way || byTouch.current || zoom.peek().scale === 1) return null;
    return panned(stage, zoom.peek(), way);
  }

  return {
    onPointerDownCapture: () => {
      byTouch.current = true;
    },
    onFocusOut: ({ currentTarget, relatedTarget }: FocusEvent) => {
      const stays =
        relatedTarget instanceof Node && (currentTarget as Node).contains(relatedTarget);
      if (!stays) byTouch.current = false;
    },
    onKeyDown(event: StageKey) {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const next = after(event);
      if (!next) return;
      event.preventDefault();
      event.stopPropagation(); // else the easel's own keys act as well
      zoom.value = next;
    },
  };
}
