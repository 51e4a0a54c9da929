import { type LabPlanes, labInPlace } from '../pixels/lab-planes.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import type { EdgeRun } from './edge-runs.ts';
import type { MeasuredContour } from './measure-edges.ts';

/** Looked at this far from the line: its blur and a little, px, within limits. */
const farther = 2;
const farthest = 12;

/** Difference in a*, b* between the two sides of a run: of the mean linear light along each. */
export function colourAcross(
  raster: LinearRaster,
  { line, places, sigmas }: MeasuredContour,
  { from, to }: EdgeRun,
): number {
  const { width, height } = raster;
  const side = (): Float32Array => new Float32Array(2);
  const sums = { width: 2, height: 1, red: side(), green: side(), blue: side() };
  const add = (x: number, y: number, at: 0 | 1): void => {
    const column = Math.min(width - 1, Math.max(0, Math.floor(x)));
    const row = Math.min(height - 1, Math.max(0, Math.floor(y)));
    const i = row * width + column;
    sums.red[at] = (sums.red[at] as number) + (raster.red[i] as number) / (to - from);
    sums.green[at] = (sums.green[at] as number) + (raster.green[i] as number) / (to - from);
    sums.blue[at] = (sums.blue[at] as number) + (raster.blue[i] as number) / (to - from);
  };
  for (let n = from; n < to; n++) {
    const sample = n % places.length;
    const place = places[sample] as number;
    const way = Math.min(farthest, (sigmas[sample] as number) + farther);
    const [x, y] = [line.x[place] as number, line.y[place] as number];
    const [dx, dy] = [line.normalX[place] as number, line.normalY[place] as number];
    add(x - way * dx, y - way * dy, 0);
    add(x + way * dx, y + way * dy, 1);
  }
  const { a, b }: LabPlanes = labInPlace(sums);
  return Math.hypot((a[1] as number) - (a[0] as number), (b[1] as number) - (b[0] as number));
}
