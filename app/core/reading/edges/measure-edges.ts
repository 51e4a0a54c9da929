import type { LinearRaster } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';
import { contourLine } from '../../raster/smooth-line.ts';
import { type Contour, traceContours } from '../../raster/trace-contours.ts';
import type { Border } from '../reading.ts';
import type { Edge, EdgeKind } from './edge.ts';
import {
  createCrossings,
  EdgeProfile,
  findCrossings,
  lightnessPyramid,
  type MeasuredContour,
  type PyramidLevel,
} from './edge-profile.ts';
import { describeEdge, type EdgeRun, edgeRuns } from './edge-runs.ts';
import { EdgeProfileFit } from './fit-edge-profile.ts';
import { classifyAlong, findOutOfFocus, measureCameraBlur } from './judge-edges.ts';

/** Every how many places of a contour one is measured. */
const everyPlaces = 8;
/** Profiles reach 16, 32, 64, 128 px to either side. */
const levels = 4;

/** What was fitted at one level for a group of neighbouring samples. */
interface LevelFit {
  group: number;
  contrast: number;
  sigma: number;
  isWhole: boolean;
}

/** Variance, px2, of the blur that a level adds by its pixels and by interpolation between them. */
function levelVariance(scale: number): number {
  return (scale * scale - 1) / 12 + (scale * scale) / 8;
}

/** Fits edge profiles across the contours of one picture; the contours share its work space. */
class Measuring {
  readonly #slots: Uint8Array;
  readonly #size: PixelSize;
  readonly #pyramid: readonly PyramidLevel[];
  readonly #profile: EdgeProfile;
  readonly #fit = new EdgeProfileFit();
  readonly #before = createCrossings();
  readonly #after = createCrossings();
  /** By level, the latest fit along the contour, which neighbouring samples share. */
  readonly #kept = Array.from(
    { length: levels },
    (): LevelFit => ({ group: -1, contrast: 0, sigma: 0, isWhole: true }),
  );

  constructor(slots: Uint8Array, lightness: Float32Array, size: PixelSize) {
    this.#slots = slots;
    this.#size = size;
    this.#pyramid = lightnessPyramid(lightness, size, levels);
    this.#profile = new EdgeProfile(this.#pyramid);
  }

  measure(contour: Contour): MeasuredContour {
    const line = contourLine(contour);
    const count = Math.max(1, Math.round(line.count / everyPlaces));
    const measured: MeasuredContour = {
      contour,
      line,
      places: new Int32Array(count),
      contrasts: new Float32Array(count),
      sigmas: new Float32Array(count),
      lengths: new Float32Array(count),
    };
    this.#profile.setLine(line);
    for (const kept of this.#kept) kept.group = -1;
    for (let n = 0; n < count; n++) {
      const from = Math.floor((n * line.count) / count);
      const to = Math.floor(((n + 1) * line.count) / count);
      const place = (from + to) >> 1;
      measured.places[n] = place;
      for (let i = from; i < to; i++) {
        measured.lengths[n] = measured.lengths[n] + line.steps[i];
      }
      this.#sample(measured, n);
    }
    return measured;
  }

  /** Takes the finest level that holds the whole edge; coarser ones are fitted at fewer samples. */
  #sample(measured: MeasuredContour, n: number): void {
    for (let level = 0; level < levels; level++) {
      const kept = this.#kept[level];
      const group = n >> level;
      if (kept.group !== group) {
        kept.group = group;
        this.#fitAt(measured, measured.places[n], level);
        kept.contrast = this.#fit.contrast;
        kept.sigma = this.#fit.sigma;
        kept.isWhole = this.#fit.isWhole;
      }
      // An edge finer than this level's pixels can't be measured at it: the finer level stands.
      if (level > 0 && kept.sigma < 1) return;
      const scale = 1 << level;
      measured.contrasts[n] = kept.contrast;
      measured.sigmas[n] = Math.sqrt(Math.max(0, (kept.sigma * scale) ** 2 - levelVariance(scale)));
      if (kept.isWhole) return;
    }
  }

  #fitAt({ contour, line }: MeasuredContour, place: number, level: number): void {
    const scale = 1 << level;
    const slots = this.#slots;
    findCrossings(slots, this.#size, line, place, -1, scale, contour.a, this.#before);
    findCrossings(slots, this.#size, line, place, 1, scale, contour.b, this.#after);
    this.#profile.fill(place, level);
    this.#fit.read(this.#profile.values, this.#before, this.#after);
  }
}

/** So many places between two pauses. */
const placesAtATime = 8000;

/**
 * Contrast and blur along contours, on the unsimplified `lightness` (L* of every pixel). Hands back
 * control now and then.
 */
export function* measureEdges(
  contours: readonly Contour[],
  slots: Uint8Array,
  lightness: Float32Array,
  size: PixelSize,
): Generator<void, MeasuredContour[]> {
  const measuring = new Measuring(slots, lightness, size);
  const measured: MeasuredContour[] = [];
  let places = 0;
  for (const contour of contours) {
    measured.push(measuring.measure(contour));
    places += contour.corners.length / 2;
    if (places < placesAtATime) continue;
    places = 0;
    yield;
  }
  return measured;
}

/** Shorter stretches are not told apart from what they belong to, mm on the sheet. */
const leastMm = 3;
/** Contours shorter than this between two corners of shapes are not listed, mm. */
const leastListedMm = 1.5;

interface EdgesFound {
  readonly edges: Edge[];
  readonly borders: Border[];
  /** The photo's own blur that was taken off, sigma in px. */
  readonly blurPx: number;
}

/**
 * Edges between the slots of a picture, measured on its unsimplified `lightness` (L* of every pixel),
 * and their sums by pairs of slots. Deterministic. Hands back control now and then.
 */
export function* findEdges(
  slots: Uint8Array,
  lightness: Float32Array,
  raster: LinearRaster,
  pxPerMm: number,
): Generator<void, EdgesFound> {
  const size = { width: raster.width, height: raster.height };
  const contours = yield* traceContours(slots, size);
  yield;
  const measured = yield* measureEdges(contours, slots, lightness, size);
  const blurPx = measureCameraBlur(measured);
  const isOutOfFocus = findOutOfFocus(measured, size, blurPx);
  yield;
  const edges: Edge[] = [];
  const sums = new BorderSums();
  const longSidePx = Math.max(size.width, size.height);
  for (const one of measured) {
    const kinds = classifyAlong(one, blurPx, longSidePx);
    const runs = edgeRuns(kinds, one.lengths, one.line.closed, leastMm * pxPerMm);
    sums.add(one, runs);
    for (const run of runs) {
      if (run.lengthPx < leastListedMm * pxPerMm) continue;
      edges.push(describeEdge(one, run, { raster, pxPerMm, blurPx, isOutOfFocus }));
    }
  }
  return { edges, borders: sums.borders(pxPerMm), blurPx };
}

interface Sum {
  lengthPx: number;
  contrast: number;
  soft: number;
  lost: number;
}

/** Edges summed up by the two slots they part. */
class BorderSums {
  readonly #sums = new Map<number, Sum>();

  add({ contour, contrasts, lengths }: MeasuredContour, runs: readonly EdgeRun[]): void {
    const pair = contour.a * 256 + contour.b;
    const sum = this.#sums.get(pair) ?? { lengthPx: 0, contrast: 0, soft: 0, lost: 0 };
    for (let n = 0; n < lengths.length; n++) {
      const length = lengths[n];
      sum.lengthPx += length;
      sum.contrast += length * contrasts[n];
    }
    const ofKind = (kind: EdgeKind): number =>
      runs.reduce((all, run) => (run.kind === kind ? all + run.lengthPx : all), 0);
    sum.soft += ofKind('soft');
    sum.lost += ofKind('lost');
    this.#sums.set(pair, sum);
  }

  /** By the lower, then the other slot. */
  borders(pxPerMm: number): Border[] {
    return [...this.#sums]
      .sort(([one], [other]) => one - other)
      .map(([pair, { lengthPx, contrast, soft, lost }]) => ({
        a: pair >> 8,
        b: pair & 255,
        lengthMm: lengthPx / pxPerMm,
        contrast: contrast / lengthPx,
        soft: Math.min(1, soft / lengthPx),
        lost: Math.min(1, lost / lengthPx),
      }));
  }
}
