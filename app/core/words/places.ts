import type { Point } from '../colour/lab.ts';
import { type Place, placeOf, type Side } from '../raster/size.ts';

/** 'at the top', 'on the left', 'upper left', 'in the middle'. */
export function sideInWords(place: Place): string {
  if (place === 'middle') return 'in the middle';
  if (place === 'top' || place === 'bottom') return `at the ${place}`;
  return place === 'left' || place === 'right' ? `on the ${place}` : place;
}

/** What of the board is raised: 'the top edge', 'the upper left corner'. */
export const edgeOfBoard = (side: Side): string =>
  `the ${side} ${side.includes(' ') ? 'corner' : 'edge'}`;

/** The third of the sheet a point lies in, in words. */
export const placeInWords = (point: Point): string => sideInWords(placeOf(point));
