import { movedCrop, resizedCrop, straightenedCrop } from '../../model/crop-moves.ts';
import { straighteningOf } from '../../model/crop-turn.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import type { Crop } from '../../model/reference.ts';

/** One press moves by a fiftieth of the cut, with Shift by a fifth. */
const shortStep = 0.02;
const longStep = 0.2;
const sizeStep = 1.05;
/** One press of [ or ], degrees. */
export const straightenStep = 0.5;

const directions: Record<string, readonly [right: number, down: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const roundToStep = (degrees: number): number =>
  Math.round(degrees / straightenStep) * straightenStep;

/** The cut after a key, or null where the key means nothing to it. */
export function cutAfterKey(
  photo: PixelSize,
  crop: Crop,
  key: string,
  shift: boolean,
): Crop | null {
  const direction = directions[key];
  if (direction) {
    const step = shift ? longStep : shortStep;
    const right = direction[0] * step * crop.size[0] * photo.width;
    return movedCrop(photo, crop, right, direction[1] * step * crop.size[1] * photo.height);
  }
  const straightening = straighteningOf(crop.turn);
  switch (key) {
    case '+':
    case '=': // the same key without Shift
      return resizedCrop(photo, crop, sizeStep);
    case '-':
    case '−':
      return resizedCrop(photo, crop, 1 / sizeStep);
    case '[':
      return straightenedCrop(photo, crop, roundToStep(straightening - straightenStep));
    case ']':
      return straightenedCrop(photo, crop, roundToStep(straightening + straightenStep));
    default:
      return null;
  }
}
