import type { Point } from '../../core/colour/lab.ts';
import { arrowDirections, movePlace } from '../pointer/stage-keys.ts';

/** An oval laid over the picture instead of a drawn stroke; all 0..1 of the picture's sides. */
export interface LooseShape {
  readonly centre: Point;
  /** Half its width and half its height. */
  readonly half: Point;
}

export const startShape: LooseShape = { centre: [0.5, 0.5], half: [0.25, 0.25] };

const smallest = 0.03;
const largest = 0.6;
const sizeStep = 1.1;

/** Factors of width and height by key. */
const sizes: Record<string, Point> = {
  '+': [sizeStep, sizeStep],
  '=': [sizeStep, sizeStep], // the same key without Shift
  '-': [1 / sizeStep, 1 / sizeStep],
  ',': [1 / sizeStep, 1],
  '.': [sizeStep, 1],
};

/** The oval after a key, or null where the key means nothing to it. Shift takes long steps. */
export function shapeAfterKey(
  { centre, half }: LooseShape,
  key: string,
  shift: boolean,
): LooseShape | null {
  const direction = arrowDirections[key];
  if (direction) return { centre: movePlace(centre, direction, shift ? 0.1 : 0.02), half };
  const size = sizes[key];
  if (!size) return null;
  const sized = (axis: 0 | 1): number =>
    Math.min(largest, Math.max(smallest, half[axis] * size[axis]));
  return { centre, half: [sized(0), sized(1)] };
}

const points = 48;

/** The oval as a closed stroke. */
export const strokeOfShape = ({ centre, half }: LooseShape): Point[] =>
  Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return [centre[0] + half[0] * Math.cos(angle), centre[1] + half[1] * Math.sin(angle)];
  });
