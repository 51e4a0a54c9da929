import type { Point } from '../../model/lab.ts';
import type { PictureTurn } from '../common/picture.tsx';

const within = (share: number): number => Math.min(1, Math.max(0, share));

/** A place on screen and the same place of the picture, 0..1 each: its own way back. */
export const turnedPoint = ([x, y]: Point, { upsideDown, mirrored }: PictureTurn): Point => [
  mirrored !== upsideDown ? 1 - x : x,
  upsideDown ? 1 - y : y,
];

/** Where in the picture a pointer is; held inside. */
export function spotOfEvent(
  event: PointerEvent & { readonly currentTarget: HTMLElement },
  turn: PictureTurn,
): Point {
  const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
  const x = within((event.clientX - left) / width);
  return turnedPoint([x, within((event.clientY - top) / height)], turn);
}

const directions: Record<string, readonly [right: number, down: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The spot after an arrow key, by a hundredth of the picture, with Shift a twentieth; as seen on screen. */
export function spotAfterKey(
  spot: Point,
  turn: PictureTurn,
  key: string,
  shift: boolean,
): Point | null {
  const direction = directions[key];
  if (!direction) return null;
  const step = shift ? 0.05 : 0.01;
  const [x, y] = turnedPoint(spot, turn);
  const moved: Point = [within(x + direction[0] * step), within(y + direction[1] * step)];
  return turnedPoint(moved, turn);
}
