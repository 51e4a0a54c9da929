import type { Signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import {
  type PictureFrame,
  pan,
  pinch,
  wholePicture,
  type Zoom,
  zoomAbout,
  zoomByDoubleTap,
} from '../picture/picture-zoom.ts';
import { arrowDirections, isShortcut } from './stage-keys.ts';
import { type Pointers, placeInPx, type StageEvent, usePointers } from './use-pointers.ts';

export function measureStage(frame: HTMLElement, ratio: number): PictureFrame {
  return { width: frame.clientWidth, height: frame.clientHeight, ratio };
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
  const began = useRef<Began | null>(null);
  const lastTap = useRef<{ place: Point; ms: number } | null>(null);
  const moved = useRef(false);

  const beginAgain = (): void => {
    const fingers = [...pointers.places.values()];
    began.current = fingers.length ? { zoom: zoom.peek(), fingers } : null;
  };

  function follow(stage: PictureFrame): Zoom | null {
    const from = began.current;
    const [a, b] = from?.fingers ?? [];
    const [movedA, movedB] = [...pointers.places.values()];
    if (!from || !a || !movedA) return null;
    if (b && movedB) return pinch(stage, from.zoom, [a, b], [movedA, movedB]);
    return pan(stage, from.zoom, [movedA[0] - a[0], movedA[1] - a[1]]);
  }

  function end(): void {
    beginAgain();
    if (pointers.places.size === 0) held.value = false;
  }

  function noticeTap(event: StageEvent, place: Point): void {
    const before = lastTap.current;
    const isSecond =
      before &&
      event.timeStamp - before.ms < doubleTapMs &&
      apart(before.place, place) < sameSpotPx;
    lastTap.current = isSecond ? null : { place, ms: event.timeStamp };
    if (isSecond)
      zoom.value = zoomByDoubleTap(measureStage(event.currentTarget, ratio), zoom.peek(), place);
  }

  const pointers: Pointers = usePointers({
    most: 2,
    captures: false,
    placeOf: placeInPx,
    onDown() {
      moved.current = pointers.places.size === 2;
      beginAgain();
      return true;
    },
    onMove(event, place) {
      const first = began.current?.fingers[0];
      if (!first || (!moved.current && apart(place, first) < slipPx)) return;
      // Only now: a mouse held from its first press on would click the stage and not the picture.
      if (!moved.current) event.currentTarget.setPointerCapture(event.pointerId);
      moved.current = true;
      held.value = true;
      zoom.value = follow(measureStage(event.currentTarget, ratio)) ?? zoom.peek();
    },
    onUp(event, place) {
      end();
      if (!moved.current) noticeTap(event, place);
    },
    onCancel: end,
  });

  return {
    ...pointers.handlers,
    onClickCapture(event: MouseEvent) {
      if (!moved.current || event.detail === 0) return;
      moved.current = false;
      event.preventDefault();
      event.stopPropagation();
    },
    onWheel(event: WheelEvent & { readonly currentTarget: HTMLElement }) {
      if (zoom.peek().scale === 1 && event.deltaY > 0) return; // the page may scroll
      event.preventDefault();
      const factor = Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.002));
      const stage = measureStage(event.currentTarget, ratio);
      zoom.value = zoomAbout(stage, zoom.peek(), placeInPx(event), factor);
    },
  };
}

type StageKey = KeyboardEvent & { readonly currentTarget: HTMLElement };

const nearer = 1.4;
/** An arrow moves the view by so much, px: the picture goes the other way. */
const stride = 60;

/**
 * Plus, minus, 0 and arrows while the picture has the focus. Arrows move it only where keys brought
 * the focus there: a pedal sends arrows too, and a finger that touched the picture left it focused.
 */
export function useZoomKeys(zoom: Signal<Zoom>, ratio: number) {
  const byTouch = useRef(false);

  function zoomByKey(event: StageKey): Zoom | null {
    const stage = measureStage(event.currentTarget, ratio);
    const middle: Point = [stage.width / 2, stage.height / 2];
    if (event.key === '+' || event.key === '=')
      return zoomAbout(stage, zoom.peek(), middle, nearer);
    if (event.key === '-') return zoomAbout(stage, zoom.peek(), middle, 1 / nearer);
    if (event.key === '0') return wholePicture;
    const direction = arrowDirections[event.key];
    if (!direction || byTouch.current || zoom.peek().scale === 1) return null;
    return pan(stage, zoom.peek(), [-stride * direction[0], -stride * direction[1]]);
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
      if (isShortcut(event)) return;
      const next = zoomByKey(event);
      if (!next) return;
      event.preventDefault();
      event.stopPropagation(); // else the easel's own keys act as well
      zoom.value = next;
    },
  };
}
