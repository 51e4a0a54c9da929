import { type Edge, edgeLimits } from '../../../app/model/edge.ts';
import type { Point } from '../../../app/model/lab.ts';
import { simplifyLine } from '../../../app/model/simplify-line.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { colourAcross } from './colour-across.ts';
import type { EdgeRun } from './edge-runs.ts';
import type { MeasuredContour } from './measure-edges.ts';
import { widthOfSigma } from './normal-curve.ts';
import { withoutBlur } from './own-blur.ts';
import { rounded } from './rounded.ts';

/** The line drawn stays this near to the contour, px. */
const drawnWithinPx = 0.5;

/** What edges of one picture have in common. */
export interface EdgeSettings {
  readonly raster: LinearRaster;
  readonly pxPerMm: number;
  /** The photo's own blur, sigma in px. */
  readonly blurPx: number;
  readonly isOutOfFocus: (x: number, y: number) => boolean;
}

function medianOf(values: Float32Array, { from, to }: EdgeRun): number {
  const own = new Float64Array(to - from);
  for (let n = 0; n < own.length; n++) own[n] = values[(from + n) % values.length] as number;
  own.sort();
  return own[own.length >> 1] as number;
}

/** Course of a run, from half way to the sample before it to half way to the one after. */
function pathOf(
  { line, places }: MeasuredContour,
  { from, to }: EdgeRun,
  { width, height }: LinearRaster,
): Point[] {
  const samples = places.length;
  const border = (n: number): number => Math.floor((n * line.count) / samples);
  // In a closed contour the run ends where the next begins: one place further.
  const first = border(from);
  const last = line.closed ? border(to) : Math.min(line.count - 1, border(to));
  const count = last - first + 1;
  const x = new Float32Array(count);
  const y = new Float32Array(count);
  for (let k = 0; k < count; k++) {
    x[k] = line.x[(first + k) % line.count] as number;
    y[k] = line.y[(first + k) % line.count] as number;
  }
  return simplifyLine(x, y, drawnWithinPx).map(
    (k): Point => [rounded((x[k] as number) / width, 4), rounded((y[k] as number) / height, 4)],
  );
}

/** More than half of the run in fields out of focus. */
function mostlyOutOfFocus(
  { line, places }: MeasuredContour,
  { from, to }: EdgeRun,
  isOutOfFocus: EdgeSettings['isOutOfFocus'],
): boolean {
  let out = 0;
  for (let n = from; n < to; n++) {
    const place = places[n % places.length] as number;
    if (isOutOfFocus(line.x[place] as number, line.y[place] as number)) out++;
  }
  return 2 * out > to - from;
}

/** A run as it is kept: medians of what was measured along it, numbers cut to what can be told. */
export function edgeOfRun(measured: MeasuredContour, run: EdgeRun, settings: EdgeSettings): Edge {
  const { raster, pxPerMm, blurPx, isOutOfFocus } = settings;
  const { contour, contrasts, sigmas } = measured;
  const { kind } = run;
  const widthPx = widthOfSigma * withoutBlur(medianOf(sigmas, run), blurPx);
  const widthShare = widthPx / Math.max(raster.width, raster.height);
  return {
    a: contour.a,
    b: contour.b,
    kind,
    graded: widthShare > edgeLimits.graded,
    heldByColour: kind === 'lost' && colourAcross(raster, measured, run) > edgeLimits.colour,
    outOfFocus: kind === 'soft' && mostlyOutOfFocus(measured, run, isOutOfFocus),
    contrast: rounded(medianOf(contrasts, run), 1),
    widthMm: rounded(widthPx / pxPerMm, 2),
    widthShare: rounded(widthShare, 5),
    lengthMm: rounded(run.lengthPx / pxPerMm, 2),
    path: pathOf(measured, run, raster),
  };
}
