import type { Point } from '../../colour/lab.ts';
import { widthOfSigma } from '../../numeric/normal-curve.ts';
import { type LabPlanes, type LinearRaster, labInPlace } from '../../raster/linear-raster.ts';
import { simplifyLine } from '../../raster/smooth-line.ts';
import { type Edge, type EdgeKind, edgeLimits } from './edge.ts';
import type { MeasuredContour } from './edge-profile.ts';
import { subtractBlur } from './judge-edges.ts';

/** Samples from .. to - 1 of one kind; in a closed contour `to` may run past its end. */
export interface EdgeRun {
  readonly kind: EdgeKind;
  readonly from: number;
  readonly to: number;
  readonly lengthPx: number;
}

/** Neighbouring samples of one kind, in order; a closed contour begins where the kind first changes. */
function rawRuns(kinds: readonly EdgeKind[], lengths: Float32Array, closed: boolean): EdgeRun[] {
  const count = kinds.length;
  const change = kinds.findIndex((kind, n) => kind !== kinds[(n + count - 1) % count]);
  const start = closed && change > 0 ? change : 0;
  const runs: EdgeRun[] = [];
  for (let from = start; from < start + count; ) {
    const kind = kinds[from % count];
    let lengthPx = 0;
    let to = from;
    for (; to < start + count && kinds[to % count] === kind; to++) {
      lengthPx += lengths[to % count];
    }
    runs.push({ kind, from, to, lengthPx });
    from = to;
  }
  return runs;
}

const joined = (one: EdgeRun, other: EdgeRun, kind: EdgeKind): EdgeRun => ({
  kind,
  from: one.from,
  to: other.to,
  lengthPx: one.lengthPx + other.lengthPx,
});

/**
 * Runs of one kind along a contour, none shorter than `leastPx` unless it is all there is: the
 * shortest is given to the longer of its neighbours until that is so.
 */
export function edgeRuns(
  kinds: readonly EdgeKind[],
  lengths: Float32Array,
  closed: boolean,
  leastPx: number,
): EdgeRun[] {
  const runs = rawRuns(kinds, lengths, closed);
  while (runs.length > 1) {
    let shortest = 0;
    for (const [n, run] of runs.entries()) {
      if (run.lengthPx < runs[shortest].lengthPx) shortest = n;
    }
    const run = runs[shortest];
    if (run.lengthPx >= leastPx) break;
    const before = runs[shortest - 1];
    const after = runs[shortest + 1];
    const kind = ((before?.lengthPx ?? -1) >= (after?.lengthPx ?? -1) ? before : after)?.kind;
    if (!kind) break;
    // Both neighbours may be of that kind: then all three become one.
    let first = shortest;
    let last = shortest;
    if (before?.kind === kind) first--;
    if (after?.kind === kind) last++;
    const all = runs.slice(first, last + 1).reduce((one, other) => joined(one, other, kind));
    runs.splice(first, last - first + 1, { ...all, kind });
  }
  return runs;
}

/** The simplified path stays this near to the contour, px. */
const drawnWithinPx = 0.5;

/** What edges of one picture have in common. */
interface EdgeSettings {
  readonly raster: LinearRaster;
  readonly pxPerMm: number;
  /** The photo's own blur, sigma in px. */
  readonly blurPx: number;
  readonly isOutOfFocus: (x: number, y: number) => boolean;
}

function medianOf(values: Float32Array, { from, to }: EdgeRun): number {
  const own = new Float64Array(to - from);
  for (let n = 0; n < own.length; n++) own[n] = values[(from + n) % values.length];
  own.sort();
  return own[own.length >> 1];
}

/** Path of a run, from half way to the sample before it to half way to the one after it. */
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
    x[k] = line.x[(first + k) % line.count];
    y[k] = line.y[(first + k) % line.count];
  }
  return simplifyLine(x, y, drawnWithinPx).map(
    (k): Point => [roundToDigits(x[k] / width, 4), roundToDigits(y[k] / height, 4)],
  );
}

/** Whether more than half of the run lies in fields out of focus. */
function mostlyOutOfFocus(
  { line, places }: MeasuredContour,
  { from, to }: EdgeRun,
  isOutOfFocus: EdgeSettings['isOutOfFocus'],
): boolean {
  let out = 0;
  for (let n = from; n < to; n++) {
    const place = places[n % places.length];
    if (isOutOfFocus(line.x[place], line.y[place])) out++;
  }
  return 2 * out > to - from;
}

/** The edge of a run: medians of what was measured along it, rounded to the digits that mean anything. */
export function describeEdge(
  measured: MeasuredContour,
  run: EdgeRun,
  settings: EdgeSettings,
): Edge {
  const { raster, pxPerMm, blurPx, isOutOfFocus } = settings;
  const { contour, contrasts, sigmas } = measured;
  const { kind } = run;
  const widthPx = widthOfSigma * subtractBlur(medianOf(sigmas, run), blurPx);
  const widthShare = widthPx / Math.max(raster.width, raster.height);
  return {
    a: contour.a,
    b: contour.b,
    kind,
    graded: widthShare > edgeLimits.graded,
    heldByColour: kind === 'lost' && measureColourAcross(raster, measured, run) > edgeLimits.colour,
    outOfFocus: kind === 'soft' && mostlyOutOfFocus(measured, run, isOutOfFocus),
    contrast: roundToDigits(medianOf(contrasts, run), 1),
    widthMm: roundToDigits(widthPx / pxPerMm, 2),
    widthShare: roundToDigits(widthShare, 5),
    lengthMm: roundToDigits(run.lengthPx / pxPerMm, 2),
    path: pathOf(measured, run, raster),
  };
}

/** The colour beside a line is taken so far beyond its blur, px, and no farther than that. */
const beyondBlurPx = 2;
const farthestPx = 12;

/** Difference in a*, b* between the two sides of a run: of the mean linear light along each. */
function measureColourAcross(
  raster: LinearRaster,
  { line, places, sigmas }: MeasuredContour,
  { from, to }: EdgeRun,
): number {
  const { width, height } = raster;
  const side = (): Float32Array => new Float32Array(2);
  const sums = { width: 2, height: 1, red: side(), green: side(), blue: side() };
  const add = (x: number, y: number, sideIndex: 0 | 1): void => {
    const column = Math.min(width - 1, Math.max(0, Math.floor(x)));
    const row = Math.min(height - 1, Math.max(0, Math.floor(y)));
    const i = row * width + column;
    sums.red[sideIndex] = sums.red[sideIndex] + raster.red[i] / (to - from);
    sums.green[sideIndex] = sums.green[sideIndex] + raster.green[i] / (to - from);
    sums.blue[sideIndex] = sums.blue[sideIndex] + raster.blue[i] / (to - from);
  };
  for (let n = from; n < to; n++) {
    const sample = n % places.length;
    const place = places[sample];
    const distance = Math.min(farthestPx, sigmas[sample] + beyondBlurPx);
    const [x, y] = [line.x[place], line.y[place]];
    const [dx, dy] = [line.normalX[place], line.normalY[place]];
    add(x - distance * dx, y - distance * dy, 0);
    add(x + distance * dx, y + distance * dy, 1);
  }
  const { a, b }: LabPlanes = labInPlace(sums);
  return Math.hypot(a[1] - a[0], b[1] - b[0]);
}

/**
 * A value rounded to so many decimal digits, exactly as `Number(value.toFixed(digits))` but ten times as
 * quick: only close to half way between two results does it need `toFixed` to decide.
 */
export function roundToDigits(value: number, digits: number): number {
  if (value === 0) return 0; // `toFixed` takes the sign off minus zero
  const units = 10 ** digits;
  const exact = value * units;
  const whole = Math.round(exact);
  if (!(Math.abs(exact - whole) < 0.499 && Math.abs(whole) < 2 ** 40)) {
    return Number(value.toFixed(digits));
  }
  return whole / units;
}
