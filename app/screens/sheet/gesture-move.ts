import { movedCrop, resizedCrop } from '../../model/crop-moves.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import type { Crop } from '../../model/reference.ts';
import type { StageView } from './stage-view.ts';

/** A finger on the stage, px. */
export type Touch = readonly [x: number, y: number];

/** Where a gesture began: the cut, how it lay on the stage, and the one or two fingers. */
export interface GestureStart {
  readonly crop: Crop;
  readonly view: StageView;
  readonly touches: readonly Touch[];
}

const middle = (touches: readonly Touch[]): Touch => [
  touches.reduce((sum, touch) => sum + touch[0], 0) / touches.length,
  touches.reduce((sum, touch) => sum + touch[1], 0) / touches.length,
];

const apart = (a: Touch, b: Touch): number => Math.max(1, Math.hypot(a[0] - b[0], a[1] - b[1]));

/** How near to a corner of the frame a finger takes hold of it, px. */
const reach = 28;

function holdsCorner({ frame }: StageView, [x, y]: Touch): boolean {
  const across = Math.min(Math.abs(x - frame.x), Math.abs(x - frame.x - frame.width));
  const down = Math.min(Math.abs(y - frame.y), Math.abs(y - frame.y - frame.height));
  return Math.hypot(across, down) <= Math.min(reach, frame.width / 4, frame.height / 4);
}

/**
 * The cut as the fingers have it now: one finger moves it, or sizes it about its centre when it took
 * hold of a corner; two fingers size it by their distance and move it along.
 */
export function gestureMove(photo: PixelSize, start: GestureStart, now: readonly Touch[]): Crop {
  const { crop, view, touches } = start;
  const [first, second] = touches;
  const [nowFirst, nowSecond] = now;
  if (!first || !nowFirst) return crop;
  if (second && nowSecond) {
    const sized = resizedCrop(photo, crop, apart(nowFirst, nowSecond) / apart(first, second));
    const [from, to] = [middle(touches), middle(now)];
    return movedCrop(photo, sized, (to[0] - from[0]) / view.scale, (to[1] - from[1]) / view.scale);
  }
  if (holdsCorner(view, first)) {
    const { x, y, width, height } = view.frame;
    const centre: Touch = [x + width / 2, y + height / 2];
    return resizedCrop(photo, crop, apart(nowFirst, centre) / apart(first, centre));
  }
  const right = (nowFirst[0] - first[0]) / view.scale;
  return movedCrop(photo, crop, right, (nowFirst[1] - first[1]) / view.scale);
}
