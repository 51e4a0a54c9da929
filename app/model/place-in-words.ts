import type { Point } from './lab.ts';

/** Which third of the sheet a place lies in: 'upper left', 'in the middle', 'on the right'. */
export function placeInWords([x, y]: Point): string {
  const across = x < 1 / 3 ? 'left' : x > 2 / 3 ? 'right' : '';
  const down = y < 1 / 3 ? 'upper' : y > 2 / 3 ? 'lower' : '';
  if (across && down) return `${down} ${across}`;
  if (across) return `on the ${across}`;
  if (down) return down === 'upper' ? 'at the top' : 'at the bottom';
  return 'in the middle';
}
