import { labelRuns, type RunLabels } from '../../raster/label-shapes.ts';
import type { PixelSize } from '../../raster/size.ts';

/** The connected areas of a mask of 0 and 1; what is said of an area stands at its shape's number. */
export interface WhiteAreas {
  readonly labels: RunLabels;
  /** Outline in px, straightened as in `shapeFacts`: pixel sides times pi / 4. */
  readonly outlinesPx: Float64Array;
  /** Centre of gravity, px. */
  readonly centresX: Float64Array;
  readonly centresY: Float64Array;
}

/** Areas hold together by the four sides of pixels. The picture's own border counts as outline. */
export function* whiteAreas(mask: Uint8Array, size: PixelSize): Generator<void, WhiteAreas> {
  const labels = yield* labelRuns(mask, size);
  yield;
  const { runs, meetings, shapes, kinds, areasPx } = labels;
  const { starts } = runs;
  const sides = new Float64Array(kinds.length);
  const sumsX = new Float64Array(kinds.length);
  const sumsY = new Float64Array(kinds.length);
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run];
    if (kinds[shape] === 0) continue;
    const start = starts[run];
    const length = starts[run + 1] - start;
    const y = Math.floor(start / size.width);
    sides[shape] = sides[shape] + 2 + 2 * length;
    sumsX[shape] = sumsX[shape] + length * (start - y * size.width + (length - 1) / 2);
    sumsY[shape] = sumsY[shape] + length * y;
  }
  // Where two runs of one area meet, neither has outline.
  for (let n = 0; n < meetings.count; n++) {
    const shape = shapes[meetings.uppers[n]];
    if (shape !== shapes[meetings.lowers[n]]) continue;
    sides[shape] = sides[shape] - 2 * meetings.sides[n];
  }
  const mean = (sum: number, shape: number): number => sum / areasPx[shape];
  return {
    labels,
    outlinesPx: sides.map((count) => (count * Math.PI) / 4),
    centresX: sumsX.map(mean),
    centresY: sumsY.map(mean),
  };
}

/** The area a pixel of the mask belongs to. */
export function areaAt({ labels }: WhiteAreas, { width }: PixelSize, pixel: number): number {
  const { starts, rows } = labels.runs;
  const y = Math.floor(pixel / width);
  let low = rows[y];
  let high = rows[y + 1] - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle] <= pixel) low = middle;
    else high = middle - 1;
  }
  return labels.shapes[low];
}

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
    for (let run = rows[y]; run < rows[y + 1]; run++) {
      if (kinds[shapes[run]] === 0) continue;
      const from = starts[run] + 2 * y + wide + 1;
      const to = from + starts[run + 1] - starts[run];
      let before = 0;
      for (let at = from; at < to; at++) {
        const above = at - wide;
        const one = depths[above];
        const left = depths[above - 1];
        const right = depths[above + 1];
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
    for (let run = rows[y + 1] - 1; run >= rows[y]; run--) {
      const shape = shapes[run];
      if (kinds[shape] === 0) continue;
      const start = starts[run];
      const shift = 2 * y + wide + 1;
      const down = (y - centresY[shape]) ** 2;
      let most = deepest[shape];
      let after = 0;
      for (let i = starts[run + 1] - 1; i >= start; i--) {
        const at = i + shift;
        const below = at + wide;
        const one = depths[below];
        const left = depths[below - 1];
        const right = depths[below + 1];
        const side = Math.min(one, after) + straight;
        const slant = Math.min(left, right) + across;
        const own = depths[at];
        const back = Math.min(side, slant);
        const depth = Math.min(own, back);
        after = depth;
        depths[at] = depth;
        if (depth < most) continue;
        const beside = i - y * width - centresX[shape];
        const away = beside * beside + down;
        if (depth === most && away > nearest[shape]) continue;
        most = depth;
        nearest[shape] = away;
        places[shape] = i;
      }
      deepest[shape] = most;
    }
  }
  return places;
}
