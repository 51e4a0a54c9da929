import { runToEnd } from '../numeric/run-to-end.ts';
import { gaussianBlur } from '../raster/gaussian-blur.ts';
import { computePxPerMm, type PixelSize } from '../raster/size.ts';
import { type Edge, type EdgeKind, kindOnSheet } from '../reading/edges/edge.ts';
import type { EdgeVerdict } from './comparison.ts';
import {
  addProfile,
  leastLike,
  type Place,
  placesAlong,
  type Softened,
  samples,
  samplesEachWay,
  softenedAt,
} from './edge-profiles.ts';
import type { MeasuredSheet } from './measured-sheet.ts';

/** Stretches shorter than this are not judged, mm (own). */
const shortestMm = 30;
/** Edges with less contrast in the expected sheet at this stage are not judged, L* (own). */
const leastContrast = 8;
/** How far to either side an edge is looked at, mm, and how far places along it lie apart. */
const sideMm = 6;
const stepMm = 1;
/** So many places along an edge are averaged, about a brush's width. */
const placesTogether = 5;
/** A lens blurs about so much of the squared picture, sigma in px: the expected sheet is looked at through it too. */
const lensPx = 0.7;
/** And so much more of it is tried to see how much more there is, mm (own). */
const moreBlurMm = 0.8;
/** An edge has come out softer where its width is off by more than this, mm (own) ... */
const leastOffMm = 1.2;
/** ... and it is so many times as wide as drawn (own). */
const timesFlatter = 2;
/** It is harder where it has surely come no further than this from hard, 0, to as soft as drawn, 1 (own) ... */
const nearHard = 0.3;
/** ... as places say that tell so much together, squared L*, and agree so well: a deviation of their mean (own). */
const leastTold = 150;
const mostSpread = 0.1;
/** So many places along it must tell (own). */
const fewestPlaces = 5;
/** So many hard edges say how sharp the photo is (own). */
const fewestHard = 5;
/** So much of its length must have come out that way (own). */
const mostOfIt = 0.7;
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

/** Widths of one edge along its course, mm, a figure for every few places; and its contrast as drawn. */
interface SeenEdge {
  readonly index: number;
  readonly edge: Edge;
  readonly kind: EdgeKind;
  readonly middle: Place;
  /** As drawn, as drawn with no soft edge at all, and as painted. */
  readonly drawn: readonly number[];
  readonly crisp: readonly number[];
  readonly came: readonly number[];
  readonly contrast: number;
  /** Whether it stands out enough, here and there alike, for its widths to tell. */
  readonly isPlain: boolean;
}

/** Whether an edge is much wider than drawn. */
function isSofter({ drawn, came, isPlain }: SeenEdge, blurMm: number): boolean {
  const soft = drawn.map((width) => Math.hypot(width, blurMm));
  const run = came.filter((width, n) => width > timesFlatter * soft[n]).length;
  return isPlain && median(came) - median(soft) >= leastOffMm && run >= mostOfIt * came.length;
}

/** The mean of what places say, each by what it tells, its deviation, and what they tell together. */
function together(places: readonly Softened[]) {
  const all = places.reduce((sum, { told }) => sum + told, 0);
  const way = places.reduce((sum, each) => sum + each.way * each.told, 0) / all;
  const squares = places.reduce((sum, each) => sum + (each.told * (each.way - way)) ** 2, 0);
  return { way, spread: Math.sqrt(squares) / all, told: all };
}

/** Whether places along an edge say together that it was painted hard. */
function isHarder(places: readonly Softened[]): boolean {
  if (places.length < fewestPlaces) return false;
  const { way, spread, told } = together(places);
  return told >= leastTold && spread < mostSpread && way + 2 * spread < nearHard;
}

/**
 * Edges that came out harder or softer than they are drawn: all pictures are measured the same way. `expected` is the
 * lightness of the sheet as it is drawn, `crisp` the same with no soft edge at all, so that what lies beside a course
 * is in both. `pause` lets messages in.
 */
export async function compareEdges(
  edges: readonly Edge[],
  expected: Float32Array,
  crisp: Float32Array,
  measured: MeasuredSheet,
  size: PixelSize,
  sheet: { readonly widthMm: number; readonly heightMm: number },
  pause: () => Promise<void>,
): Promise<EdgeVerdict[]> {
  const pxPerMm = computePxPerMm(size, sheet);
  const spacing = (sideMm * pxPerMm) / samplesEachWay;
  const blurred = (plane: Float32Array, px: number): Float32Array => {
    const own = Float32Array.from(plane);
    runToEnd(gaussianBlur([own], size, px));
    return own;
  };
  // A blur of deviation 1 is called 2 wide.
  const lensAnd = (blurMm: number): number => Math.hypot(lensPx, (blurMm / 2) * pxPerMm);
  /** Profiles across every few places of a course: as drawn, with no soft edge, and as painted. */
  const profilesOf = (places: readonly Place[], planes: readonly [Float32Array, Float32Array]) => {
    const found: (readonly [Float64Array, Float64Array, Float64Array])[] = [];
    for (let from = 0; from + placesTogether <= places.length; from += placesTogether) {
      const own = [0, 1, 2].map(() => new Float64Array(samples));
      const whole = places
        .slice(from, from + placesTogether)
        .every(
          (place) =>
            addProfile(planes[0], null, size, place, spacing, own[0]) &&
            addProfile(planes[1], null, size, place, spacing, own[1]) &&
            addProfile(measured.lightness, measured.states, size, place, spacing, own[2]),
        );
      if (whole)
        found.push([0, 1, 2].map((n) => own[n].map((sum) => sum / placesTogether)) as never);
    }
    return found;
  };
  const throughLens = [blurred(expected, lensPx), blurred(crisp, lensPx)] as const;
  const alongOf = ({ path }: Edge): Place[] => placesAlong(path, size, stepMm * pxPerMm);
  const seen = edges.flatMap((edge, index): SeenEdge[] => {
    if (edge.lengthMm < shortestMm || edge.graded) return [];
    const places = alongOf(edge);
    const shapes = profilesOf(places, throughLens).map((each) => each.map(shapeOfProfile));
    if (shapes.length < fewestPlaces) return [];
    const [drawn, bare, came] = [0, 1, 2].map((n) =>
      shapes.map((each) => (each[n].width * spacing) / pxPerMm),
    );
    const contrast = median(shapes.map(([own]) => own.contrast));
    const like = median(shapes.map((each) => each[2].contrast / Math.max(1e-6, each[0].contrast)));
    const isPlain = contrast >= leastContrast && like >= leastLike && like <= 1 / leastLike;
    const middle = places[places.length >> 1];
    return [
      { index, edge, kind: kindOnSheet(edge), middle, drawn, crisp: bare, came, contrast, isPlain },
    ];
  });
  await pause();
  const softenedAlong = (edge: Edge, planes: Parameters<typeof profilesOf>[1]): Softened[] =>
    profilesOf(alongOf(edge), planes).flatMap(
      ([soft, hard, came]) => softenedAt(came, hard, soft) ?? [],
    );
  // How much wider edges came out that were to be hard than they are drawn: the lens, and grain. Squares add up.
  const more = [blurred(crisp, lensAnd(moreBlurMm)), throughLens[1]] as const;
  const wider = seen.flatMap(({ edge, kind, isPlain }) => {
    if (!isPlain || (kind !== 'hard' && kind !== 'found')) return [];
    const places = softenedAlong(edge, more);
    return places.length < fewestPlaces ? [] : [together(places).way];
  });
  await pause();
  const blurMm = wider.length < fewestHard ? 0 : moreBlurMm * Math.sqrt(Math.max(0, median(wider)));
  const asSharp = [blurred(expected, lensAnd(blurMm)), blurred(crisp, lensAnd(blurMm))] as const;
  return seen.flatMap((each): EdgeVerdict[] => {
    const { index, edge, kind, middle, contrast } = each;
    const mayHarden = kind === 'soft' || kind === 'lost';
    const came = isSofter(each, blurMm)
      ? 'softer'
      : mayHarden && isHarder(softenedAlong(edge, asSharp))
        ? 'harder'
        : null;
    if (came === null) return [];
    return [
      {
        edge: index,
        at: [middle.x / size.width, middle.y / size.height],
        lengthMm: edge.lengthMm,
        decided: kind,
        came,
        expectedMm: median(each.drawn),
        measuredMm: median(each.came),
        contrast,
      },
    ];
  });
}
