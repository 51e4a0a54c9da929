import type { RunLabels } from './label-shapes.ts';
import type { PixelSize } from './size.ts';

/** Steps of the 3-4 chamfer distance to the side and to the corner, in thirds of a pixel. */
const sideStep = 3;
const cornerStep = 4;

/** Centre of gravity of every shape, px. */
function findCentres({ runs: { starts }, shapes, areasPx }: RunLabels, width: number) {
  const sumsX = new Float64Array(areasPx.length);
  const sumsY = new Float64Array(areasPx.length);
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run];
    const start = starts[run];
    const length = starts[run + 1] - start;
    const y = Math.floor(start / width);
    sumsX[shape] = sumsX[shape] + length * (start - y * width + (length - 1) / 2);
    sumsY[shape] = sumsY[shape] + length * y;
  }
  const mean = (sum: number, shape: number): number => sum / areasPx[shape];
  return { x: sumsX.map(mean), y: sumsY.map(mean) };
}

/**
 * The deepest pixel of every shape of a mask that holds 1 (0 elsewhere): of equally deep ones the nearest
 * to the shape's centre of gravity, then the first as the picture is read; -1 for shapes that hold 0.
 * Depth is the 3-4 chamfer distance (Borgefors, 'Distance Transformations in Digital Images', 1986);
 * what lies beyond the picture counts as 0. A depth is at most three times the short side in px, so
 * 16 bits hold it up to 43 000 px.
 */
export function findDeepestPlaces(labels: RunLabels, { width, height }: PixelSize): Int32Array {
  const { runs, shapes, kinds } = labels;
  const { starts, rows } = runs;
  const centres = findCentres(labels, width);
  // A rim of zeros on every side saves asking for the picture's border.
  const wide = width + 2;
  const depths = new Uint16Array(wide * (height + 2));
  for (let y = 0; y < height; y++) {
    for (let run = rows[y]; run < rows[y + 1]; run++) {
      if (kinds[shapes[run]] === 0) continue;
      const from = starts[run] + 2 * y + wide + 1;
      const to = from + starts[run + 1] - starts[run];
      let before = 0;
      for (let i = from; i < to; i++) {
        const above = i - wide;
        const one = depths[above];
        const left = depths[above - 1];
        const right = depths[above + 1];
        const side = Math.min(one, before) + sideStep;
        const corner = Math.min(left, right) + cornerStep;
        before = Math.min(side, corner);
        depths[i] = before;
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
      const down = (y - centres.y[shape]) ** 2;
      let most = deepest[shape];
      let after = 0;
      for (let pixel = starts[run + 1] - 1; pixel >= start; pixel--) {
        const i = pixel + shift;
        const below = i + wide;
        const one = depths[below];
        const left = depths[below - 1];
        const right = depths[below + 1];
        const side = Math.min(one, after) + sideStep;
        const corner = Math.min(left, right) + cornerStep;
        const own = depths[i];
        const back = Math.min(side, corner);
        const depth = Math.min(own, back);
        after = depth;
        depths[i] = depth;
        if (depth < most) continue;
        const beside = pixel - y * width - centres.x[shape];
        const away = beside * beside + down;
        if (depth === most && away > nearest[shape]) continue;
        most = depth;
        nearest[shape] = away;
        places[shape] = pixel;
      }
      deepest[shape] = most;
    }
  }
  return places;
}
