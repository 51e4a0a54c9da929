import type { Point } from '../../core/colour/lab.ts';

/** Steps to the right and down the screen, by arrow key. */
export const arrowDirections: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Whether a key is meant for the browser or the system: a stage leaves it alone. */
export const isShortcut = ({ ctrlKey, metaKey, altKey }: KeyboardEvent): boolean =>
  ctrlKey || metaKey || altKey;

/** A place (0..1 of the sides) moved by so many steps in a direction, held inside. */
export function movePlace(place: Point, direction: Point, step: number): Point {
  const moved = (axis: 0 | 1): number =>
    Math.min(1, Math.max(0, place[axis] + step * direction[axis]));
  return [moved(0), moved(1)];
}
