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
/** An edge has come out otherwise where its width is off by more than this, mm (own). */
const leastOffMm = 1.2;
/** It is softer where it is so many times as wide as drawn (own). */
const timesFlatter = 2;
/**
 * It can only be told to be harder where it is drawn so many times as wide as a hard one would be, and is where it came
 * nearer to that than so much of the way (own). Where even a hard one would look wide, something else lies beside it.
 */
const leastSofter = 1.5;
const mostCrispMm = 2.2;
const nearHard = 0.25;
/** So many places along it must tell (own). */
const fewestPlaces = 5;
/** So many hard edges say how sharp the photo is (own). */
const fewestHard = 5;
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

/**
 * Contrast of a profile and its width, in samples: from where a fifth of the rise is done to where four fifths are, as
 * the steepest part of a stroke that has run says little; times what makes a blur of deviation 1 two wide.
 */
function shapeOfProfile(profile: Float64Array): { contrast: number; width: number } {
  const mean = (from: number, to: number): number => {
    let sum = 0;
    for (let k = from; k < to; k++) sum += profile[k];
    return sum / (to - from);
  };
  const [low, high] = [mean(0, 5), mean(samples - 5, samples)];
  const rise = high - low;
  const done = (k: number): number => (profile[k] - low) / rise;
  // The place nearest to the middle where half of it is done.
  let half = samplesEachWay;
  for (let away = 0; away < samplesEachWay - 1; away++) {
    const at = [samplesEachWay - away, samplesEachWay + away].find(
      (k) => done(k) <= 0.5 !== done(k + 1) <= 0.5,
    );
    if (at === undefined) continue;
    half = at;
    break;
  }
  let [from, to] = [half, half + 1];
  while (from > 0 && done(from) > fifth) from--;
  while (to < samples - 1 && done(to) < 1 - fifth) to++;
  const part = (k: number, level: number): number =>
    Math.min(1, Math.max(0, (level - done(k)) / (done(k + 1) - done(k)) || 0));
  const width = to - 1 + part(to - 1, 1 - fifth) - (from + part(from, fifth));
  return { contrast: Math.abs(rise), width: Math.max(0.1, width) * fifthsWidth };
}

const fifth = 0.2;
/** A Gaussian blur of deviation 1 has its fifths 1.683 apart, and is called 2 wide. */
const fifthsWidth = 2 / 1.683;

const median = (list: readonly number[]): number =>
  list.toSorted((one, two) => one - two)[list.length >> 1] ?? 0;

/** Widths of one edge along its course, mm, a figure for every few places; and how its contrasts compare. */
interface SeenEdge {
  readonly index: number;
  readonly edge: Edge;
  readonly middle: Place;
  /** As drawn, as drawn with no soft edge at all, and as painted. */
  readonly drawn: readonly number[];
  readonly crisp: readonly number[];
  readonly came: readonly number[];
  readonly contrast: number;
}

/**
 * How much wider edges came out that were to be hard than they are drawn, mm: the lens, and grain. The middle one of
 * all of them, as the root of a difference of squares; 0 where there are hardly any.
 */
function blurOf(seen: readonly SeenEdge[]): number {
  const wider = seen.flatMap(({ edge, crisp, came }) => {
    const kind = kindOnSheet(edge);
    return kind === 'hard' || kind === 'found'
      ? [median(came.map((width, n) => width * width - crisp[n] * crisp[n]))]
      : [];
  });
  return wider.length < fewestHard ? 0 : Math.sqrt(Math.max(0, median(wider)));
}

/** Which way an edge came out otherwise than drawn; null where it did not, or can't be told. */
function howItCame({ drawn, crisp, came }: SeenEdge, blurMm: number): 'harder' | 'softer' | null {
  const soft = drawn.map((width) => Math.hypot(width, blurMm));
  const hard = crisp.map((width) => Math.hypot(width, blurMm));
  const run = came.filter((width, n) => width > timesFlatter * soft[n]).length;
  if (median(came) - median(soft) >= leastOffMm && run >= mostOfIt * came.length) return 'softer';
  // How far each place has come from hard to soft, where the two can be told apart.
  const ways = came.flatMap((width, n) =>
    hard[n] <= mostCrispMm && soft[n] >= leastSofter * hard[n] && soft[n] - hard[n] >= leastOffMm
      ? [(width - hard[n]) / (soft[n] - hard[n])]
      : [],
  );
  if (ways.length < fewestPlaces || median(ways) > nearHard) return null;
  return ways.filter((way) => way < 0.5).length >= mostOfIt * ways.length ? 'harder' : null;
}

/**
 * Edges that came out harder or softer than they are drawn: all pictures are measured the same way. `expected` is the
 * lightness of the sheet as it is drawn, `crisp` the same with no soft edge at all, so that what makes a course look
 * wide is in both.
 */
export function compareEdges(
  edges: readonly Edge[],
  expected: Float32Array,
  crisp: Float32Array,
  measured: MeasuredSheet,
  size: PixelSize,
  sheet: { readonly widthMm: number; readonly heightMm: number },
): EdgeVerdict[] {
  const pxPerMm = computePxPerMm(size, sheet);
  const [soft, hard] = [expected, crisp].map((plane) => {
    const seen = Float32Array.from(plane);
    runToEnd(gaussianBlur([seen], size, lensPx));
    return seen;
  });
  const spacing = (sideMm * pxPerMm) / samplesEachWay;
  const seen = edges.flatMap((edge, index): SeenEdge[] => {
    if (edge.lengthMm < shortestMm || edge.graded) return [];
    const places = placesAlong(edge.path, size, stepMm * pxPerMm);
    const [widths, contrasts, likes] = [[[], [], []] as number[][], [] as number[], [] as number[]];
    for (let from = 0; from + together <= places.length; from += together) {
      const profiles = [0, 1, 2].map(() => new Float64Array(samples));
      const whole = places
        .slice(from, from + together)
        .every(
          (place) =>
            addProfile(soft, null, size, place, spacing, profiles[0]) &&
            addProfile(hard, null, size, place, spacing, profiles[1]) &&
            addProfile(measured.lightness, measured.states, size, place, spacing, profiles[2]),
        );
      if (!whole) continue;
      const shapes = profiles.map(shapeOfProfile);
      for (const [n, { width }] of shapes.entries()) widths[n].push((width * spacing) / pxPerMm);
      contrasts.push(shapes[0].contrast / together);
      likes.push(shapes[2].contrast / Math.max(1e-6, shapes[0].contrast));
    }
    const [drawn, bare, came] = widths;
    const [contrast, like] = [median(contrasts), median(likes)];
    if (drawn.length < fewestPlaces || contrast < leastContrast) return [];
    if (like < leastLike || like > 1 / leastLike) return [];
    const middle = places[places.length >> 1];
    return [{ index, edge, middle, drawn, crisp: bare, came, contrast }];
  });
  const blurMm = blurOf(seen);
  return seen.flatMap((each): EdgeVerdict[] => {
    const came = howItCame(each, blurMm);
    const { index, edge, middle, contrast } = each;
    if (came === null) return [];
    return [
      {
        edge: index,
        at: [middle.x / size.width, middle.y / size.height],
        lengthMm: edge.lengthMm,
        decided: kindOnSheet(edge),
        came,
        expectedMm: median(each.drawn),
        measuredMm: median(each.came),
        contrast,
      },
    ];
  });
}
