import { useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import type { PictureTurn } from '../../ui/picture/picture.tsx';
import type { Look } from './use-look.ts';

type StageEvent = PointerEvent & { readonly currentTarget: HTMLElement };

/**
 * Finger, mouse and keys on the picture while she touches for value: where the finger is is shown at
 * once, where it is lifted stays marked; a second spot is compared with the first, a third starts anew.
 */
export function useSpotTouch({ marks, moving, turn }: Look) {
  const finger = useRef<number | null>(null);

  const beginIfFull = (): void => {
    if (marks.value.length >= 2) marks.value = [];
  };
  const mark = (spot: Point): void => {
    beginIfFull();
    marks.value = [...marks.value, spot];
    moving.value = null;
  };

  const down = (event: StageEvent): void => {
    if (event.button !== 0 || finger.current !== null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    finger.current = event.pointerId;
    beginIfFull();
    moving.value = locateSpot(event, turn.value);
  };
  const move = (event: StageEvent): void => {
    const hovers = event.pointerType === 'mouse' && marks.value.length < 2;
    const mine = finger.current === null ? hovers : finger.current === event.pointerId;
    if (mine) moving.value = locateSpot(event, turn.value);
  };
  const up = (event: StageEvent): void => {
    if (finger.current !== event.pointerId) return;
    finger.current = null;
    mark(locateSpot(event, turn.value));
  };
  const cancel = (event: StageEvent): void => {
    if (finger.current !== event.pointerId) return;
    finger.current = null;
    moving.value = null;
  };
  const leave = (): void => {
    if (finger.current === null) moving.value = null;
  };
  const keyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const from = moving.value ?? marks.value.at(-1) ?? [0.5, 0.5];
    const next = moveSpotByKey(from, turn.value, event.key, event.shiftKey);
    if (next) {
      beginIfFull();
      moving.value = next;
    } else if (event.key === 'Enter' || event.key === ' ') mark(from);
    else if (event.key === 'Escape') {
      marks.value = [];
      moving.value = null;
    } else return;
    event.preventDefault();
  };

  return {
    onPointerDown: down,
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: cancel,
    onLostPointerCapture: cancel,
    onPointerLeave: leave,
    onKeyDown: keyDown,
  };
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

/** A place on screen and the same place of the picture, 0..1 each: its own way back. */
export const turnPoint = ([x, y]: Point, { upsideDown, mirrored }: PictureTurn): Point => [
  mirrored !== upsideDown ? 1 - x : x,
  upsideDown ? 1 - y : y,
];

/** Where in the picture a pointer is; held inside. */
function locateSpot(
  event: PointerEvent & { readonly currentTarget: HTMLElement },
  turn: PictureTurn,
): Point {
  const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
  const x = within((event.clientX - left) / width);
  return turnPoint([x, within((event.clientY - top) / height)], turn);
}

const directions: Record<string, readonly [right: number, down: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The spot after an arrow key, by a hundredth of the picture, with Shift a twentieth; as seen on screen. */
function moveSpotByKey(spot: Point, turn: PictureTurn, key: string, shift: boolean): Point | null {
  const direction = directions[key];
  if (!direction) return null;
  const step = shift ? 0.05 : 0.01;
  const [x, y] = turnPoint(spot, turn);
  const moved: Point = [within(x + direction[0] * step), within(y + direction[1] * step)];
  return turnPoint(moved, turn);
}
