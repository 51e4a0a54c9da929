import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { WhiteAreas } from './white-areas.ts';

/** Steps to the side and across, in thirds of a pixel. */
const straight = 3;
const across = 4;

/**
 * For every area (kind 1) the pixel deepest inside it, of several alike the one nearest its centre of
 * gravity, then the first in reading order; -1 for the others. Depth by the 3-4 chamfer distance
 * (Borgefors, 'Distance Transformations in Digital Images', 1986); beyond the picture nothing is white.
 * A depth is at most three times the short side in px: 16 bits hold it up to 43 000 px.
 */
export function deepestPlaces(areas: WhiteAreas, { width, height }: PixelSize): Int32Array {
  const { labels, centresX, centresY } = areas;
  const { runs, shapes, kinds } = labels;
  const { starts, rows } = runs;
  // A rim of nothing on every side saves asking for the picture's border.
  const wide = width + 2;
  const depths = new Uint16Array(wide * (height + 2));
  for (let y = 0; y < height; y++) {
    for (let run = rows[y] as number; run < (rows[y + 1] as number); run++) {
      if (kinds[shapes[run] as number] === 0) continue;
      const from = (starts[run] as number) + 2 * y + wide + 1;
      const to = from + (starts[run + 1] as number) - (starts[run] as number);
      let before = 0;
      for (let at = from; at < to; at++) {
        const above = at - wide;
        const one = depths[above] as number;
        const left = depths[above - 1] as number;
        const right = depths[above + 1] as number;
        const side = Math.min(one, before) + straight;
        const slant = Math.min(left, right) + across;
        before = Math.min(side, slant);
        depths[at] = before;
      }
    }
  }
  const places = new Int32Array(kinds.length).fill(-1);
  const deepest = new Uint16Array(kinds.length);
  const nearest = new Float64Array(kinds.length);
  for (let y = height - 1; y >= 0; y--) {
    for (let run = (rows[y + 1] as number) - 1; run >= (rows[y] as number); run--) {
      const shape = shapes[run] as number;
      if (kinds[shape] === 0) continue;
      const start = starts[run] as number;
      const shift = 2 * y + wide + 1;
      const down = (y - (centresY[shape] as number)) ** 2;
      let most = deepest[shape] as number;
      let after = 0;
      for (let i = (starts[run + 1] as number) - 1; i >= start; i--) {
        const at = i + shift;
        const below = at + wide;
        const one = depths[below] as number;
        const left = depths[below - 1] as number;
        const right = depths[below + 1] as number;
        const side = Math.min(one, after) + straight;
        const slant = Math.min(left, right) + across;
        const own = depths[at] as number;
        const back = Math.min(side, slant);
        const depth = Math.min(own, back);
        after = depth;
        depths[at] = depth;
        if (depth < most) continue;
        const beside = i - y * width - (centresX[shape] as number);
        const away = beside * beside + down;
        if (depth === most && away > (nearest[shape] as number)) continue;
        most = depth;
        nearest[shape] = away;
        places[shape] = i;
      }
      deepest[shape] = most;
    }
  }
  return places;
}
