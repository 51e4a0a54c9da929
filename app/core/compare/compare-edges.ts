import type { Point } from '../colour/lab.ts';
import { runToEnd } from '../numeric/run-to-end.ts';
import { gaussianBlur } from '../raster/gaussian-blur.ts';
import { computePxPerMm, type PixelSize } from '../raster/size.ts';
import { type Edge, kindOnSheet } from '../reading/edges/edge.ts';
import type { EdgeVerdict } from './comparison.ts';
import { type MeasuredSheet, pixelStates } from './measured-sheet.ts';

/** Stretches shorter than this are not judged, mm (own). */
const shortestMm = 30;
/** Edges with less contrast in the expected sheet at this stage are not judged, L* (own). */
const leastContrast = 8;
/** How far to either side an edge is looked at, mm, and how far places along it lie apart. */
const sideMm = 6;
const stepMm = 1;
/** So many places along an edge are averaged, about a brush's width. */
const together = 5;
/** A lens blurs about so much of the squared picture, sigma in px: the expected sheet is looked at through it too. */
const lensPx = 0.7;
/** An edge has come out otherwise where it is so many times as steep or as flat as drawn (own) ... */
const timesSteeper = 2;
/** ... and its width differs by more than this, mm (own). */
const leastOffMm = 1.2;
/** So much of its length must have come out that way (own). */
const mostOfIt = 0.7;
/** Contrasts must be alike, or it is the shapes that differ: at least this share of the drawn one (own). */
const leastLike = 0.5;

/** A place on an edge and the direction across it, px. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly nx: number;
  readonly ny: number;
}

/** Places along a course, evenly apart. */
function placesAlong(
  path: readonly Point[],
  { width, height }: PixelSize,
  stepPx: number,
): Place[] {
  const places: Place[] = [];
  let rest = 0;
  for (let n = 1; n < path.length; n++) {
    const [x, y] = [path[n - 1][0] * width, path[n - 1][1] * height];
    const [dx, dy] = [path[n][0] * width - x, path[n][1] * height - y];
    const length = Math.hypot(dx, dy);
    for (; rest < length; rest += stepPx) {
      const part = rest / length;
      places.push({ x: x + part * dx, y: y + part * dy, nx: -dy / length, ny: dx / length });
    }
    rest -= length;
  }
  return places;
}

const samplesEachWay = 12;
const samples = 2 * samplesEachWay + 1;

/** Adds lightness across a place to a profile; false where a pixel does not count. */
function addProfile(
  plane: Float32Array,
  states: Uint8Array | null,
  { width, height }: PixelSize,
  { x, y, nx, ny }: Place,
  spacing: number,
  out: Float64Array,
): boolean {
  for (let k = 0; k < samples; k++) {
    const away = (k - samplesEachWay) * spacing;
    const [px, py] = [x + away * nx - 0.5, y + away * ny - 0.5];
    const [column, row] = [Math.floor(px), Math.floor(py)];
    if (column < 0 || row < 0 || column >= width - 1 || row >= height - 1) return false;
    const i = row * width + column;
    if (states && states[i] !== pixelStates.counts) return false;
    const [u, v] = [px - column, py - row];
    const top = plane[i] + u * (plane[i + 1] - plane[i]);
    const low = plane[i + width] + u * (plane[i + width + 1] - plane[i + width]);
    out[k] += top + v * (low - top);
  }
  return true;
}

/** Contrast of a profile and its width, in samples: the steepest rise over two samples says how wide it is. */
function shapeOfProfile(profile: Float64Array): { contrast: number; width: number } {
  const mean = (from: number, to: number): number => {
    let sum = 0;
    for (let k = from; k < to; k++) sum += profile[k];
    return sum / (to - from);
  };
  const rise = mean(samples - 5, samples) - mean(0, 5);
  let steepest = 1e-6;
  for (let k = 4; k < samples - 4; k++)
    steepest = Math.max(steepest, (Math.sign(rise) * (profile[k + 1] - profile[k - 1])) / 2);
  return { contrast: Math.abs(rise), width: (0.8 * Math.abs(rise)) / steepest };
}

const median = (list: readonly number[]): number =>
  list.toSorted((one, two) => one - two)[list.length >> 1] ?? 0;

/** Edges that came out harder or softer than they are drawn: both pictures are measured the same way. */
export function compareEdges(
  edges: readonly Edge[],
  expected: Float32Array,
  measured: MeasuredSheet,
  size: PixelSize,
  sheet: { readonly widthMm: number; readonly heightMm: number },
): EdgeVerdict[] {
  const pxPerMm = computePxPerMm(size, sheet);
  const seen = Float32Array.from(expected);
  runToEnd(gaussianBlur([seen], size, lensPx));
  const spacing = (sideMm * pxPerMm) / samplesEachWay;
  return edges.flatMap((edge, index): EdgeVerdict[] => {
    if (edge.lengthMm < shortestMm || edge.graded) return [];
    const places = placesAlong(edge.path, size, stepMm * pxPerMm);
    const drawn: number[] = [];
    const came: number[] = [];
    const contrasts: number[] = [];
    const likes: number[] = [];
    for (let from = 0; from + together <= places.length; from += together) {
      const [one, two] = [new Float64Array(samples), new Float64Array(samples)];
      const group = places.slice(from, from + together);
      const whole = group.every(
        (place) =>
          addProfile(seen, null, size, place, spacing, one) &&
          addProfile(measured.lightness, measured.states, size, place, spacing, two),
      );
      if (!whole) continue;
      const [plan, paint] = [shapeOfProfile(one), shapeOfProfile(two)];
      contrasts.push(plan.contrast / together);
      likes.push(paint.contrast / Math.max(1e-6, plan.contrast));
      drawn.push((plan.width * spacing) / pxPerMm);
      came.push((paint.width * spacing) / pxPerMm);
    }
    if (drawn.length < 5) return [];
    const contrast = median(contrasts);
    const like = median(likes);
    const [expectedMm, measuredMm] = [median(drawn), median(came)];
    if (contrast < leastContrast || like < leastLike || like > 1 / leastLike) return [];
    if (Math.abs(expectedMm - measuredMm) < leastOffMm) return [];
    const times = expectedMm / measuredMm;
    const isOff = (n: number): boolean =>
      times > 1 ? drawn[n] > timesSteeper * came[n] : came[n] > timesSteeper * drawn[n];
    const off = drawn.filter((_, n) => isOff(n)).length;
    if (off < mostOfIt * drawn.length) return [];
    const middle = places[places.length >> 1];
    return [
      {
        edge: index,
        at: [middle.x / size.width, middle.y / size.height],
        lengthMm: edge.lengthMm,
        decided: kindOnSheet(edge),
        came: times > 1 ? 'harder' : 'softer',
        expectedMm,
        measuredMm,
        contrast,
      },
    ];
  });
}
