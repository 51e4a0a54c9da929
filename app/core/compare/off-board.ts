import { runToEnd } from '../numeric/run-to-end.ts';
import { solveLinear } from '../numeric/solve.ts';
import { gaussianBlur } from '../raster/gaussian-blur.ts';
import { labelPixels, labelRuns } from '../raster/label-shapes.ts';
import type { LinearRaster } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';

/** The part of a photo's own border, as a share of its sides, that shows the board (own). */
const rimShare = 0.03;
/** What differs from the board by so many of its own deviations is something else (own). */
const boardDeviations = 4;
const leastDeviation = 0.012;

/**
 * What in a photo is not the board: 1 where the colour differs from that of the rim, the largest such piece alone, its
 * holes left as they are. The rim's colour may slope from one side to the other.
 */
export function offBoard(raster: LinearRaster): Uint8Array {
  const { width, height } = raster;
  const rim = Math.max(2, Math.round(rimShare * Math.max(width, height)));
  const planes = [raster.red, raster.green, raster.blue].map((plane) => {
    const root = plane.map((v) => Math.sqrt(Math.max(0, v)));
    runToEnd(gaussianBlur([root], raster, 1.5));
    return root;
  });
  const isRim = (x: number, y: number): boolean =>
    x < rim || y < rim || x >= width - rim || y >= height - rim;
  const places = rimPlaces(raster, isRim);
  const differs = new Uint8Array(width * height);
  const away = new Float32Array(width * height);
  for (const plane of planes) {
    const slope = slopeOfRim(plane, raster, places);
    const left = Float32Array.from(places, (i) =>
      Math.abs(plane[i] - slope(i % width, (i / width) | 0)),
    ).sort();
    const deviation = Math.max(leastDeviation, 1.4826 * (left[left.length >> 1] ?? 0));
    for (let y = 0, i = 0; y < height; y++)
      for (let x = 0; x < width; x++, i++) {
        const off = (plane[i] - slope(x, y)) / deviation;
        away[i] += off * off;
      }
  }
  for (let i = 0; i < away.length; i++) differs[i] = away[i] > boardDeviations ** 2 * 3 ? 1 : 0;
  const runs = runToEnd(labelRuns(differs, raster));
  const labels = labelPixels(runs);
  let largest = -1;
  for (let n = 0; n < runs.kinds.length; n++)
    if (runs.kinds[n] === 1 && (largest < 0 || runs.areasPx[n] > runs.areasPx[largest]))
      largest = n;
  return Uint8Array.from(labels, (label) => (label === largest ? 1 : 0));
}

/** Every other pixel of the rim each way. */
function rimPlaces(
  { width, height }: PixelSize,
  isRim: (x: number, y: number) => boolean,
): Int32Array {
  const places: number[] = [];
  for (let y = 0; y < height; y += 2)
    for (let x = 0; x < width; x += 2) if (isRim(x, y)) places.push(y * width + x);
  return Int32Array.from(places);
}

/** The plane through the rim of a picture, what stands off it left out after a first look. */
function slopeOfRim(
  plane: Float32Array,
  { width, height }: PixelSize,
  places: Int32Array,
): (x: number, y: number) => number {
  let fitted = (_x: number, _y: number): number => 0;
  let near = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 4; round++) {
    const matrix = new Float64Array(9);
    const right = new Float64Array(3);
    let [count, sum] = [0, 0];
    for (const i of places) {
      const [x, y] = [i % width, (i / width) | 0];
      const value = plane[i];
      const off = Math.abs(value - fitted(x, y));
      if (off > near) continue;
      count++;
      sum += off;
      const row = [1, x / width - 0.5, y / height - 0.5];
      for (let k = 0; k < 3; k++) {
        right[k] += row[k] * value;
        for (let j = 0; j < 3; j++) matrix[3 * k + j] += row[k] * row[j];
      }
    }
    for (let i = 0; i < 3; i++) matrix[4 * i] += 1e-6;
    if (!solveLinear(matrix, right, 3)) break;
    const [a, b, c] = right;
    fitted = (x, y) => a + b * (x / width - 0.5) + c * (y / height - 0.5);
    near = round === 0 ? 0.15 : Math.max(0.03, (2.5 * sum) / Math.max(1, count));
  }
  return fitted;
}
