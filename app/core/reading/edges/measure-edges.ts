import { type ContourLine, contourLine } from '../../raster/contour-line.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { Contour } from '../../raster/trace-contours.ts';
import {
  EdgeProfile,
  findCrossings,
  lightnessPyramid,
  noCrossings,
  type PyramidLevel,
} from './edge-profile.ts';
import { EdgeProfileFit } from './fit-edge-profile.ts';

/** Every how many places of a contour one is measured. */
const everyPlaces = 8;
/** Profiles reach 16, 32, 64, 128 px to either side. */
const levels = 4;

/** What was measured along one contour, sample by sample. */
export interface MeasuredContour {
  readonly contour: Contour;
  readonly line: ContourLine;
  /** Place of the line each sample was taken at. */
  readonly places: Int32Array;
  /** Difference of lightness across, L*, 0 or more. */
  readonly contrasts: Float32Array;
  /** Blur of the edge, sigma in px, the photo's own included. */
  readonly sigmas: Float32Array;
  /** Length each sample stands for, px. */
  readonly lengths: Float32Array;
}

interface Look {
  group: number;
  contrast: number;
  sigma: number;
  isWhole: boolean;
}

/** Pixels of a level and reading between them blur by themselves: variance, px2. */
function ownVariance(scale: number): number {
  return (scale * scale - 1) / 12 + (scale * scale) / 8;
}

/** Looks across contours of one picture; work space is kept between them. */
class Measuring {
  readonly #slots: Uint8Array;
  readonly #size: PixelSize;
  readonly #pyramid: readonly PyramidLevel[];
  readonly #profile: EdgeProfile;
  readonly #across = new EdgeProfileFit();
  readonly #before = noCrossings();
  readonly #after = noCrossings();
  /** The last look of every level along the contour, for the samples about it. */
  readonly #kept = Array.from(
    { length: levels },
    (): Look => ({ group: -1, contrast: 0, sigma: 0, isWhole: true }),
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
    this.#profile.look(line);
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

  /** Finest level that holds the whole edge; coarser ones are looked at less often. */
  #sample(measured: MeasuredContour, n: number): void {
    for (let level = 0; level < levels; level++) {
      const kept = this.#kept[level];
      const group = n >> level;
      if (kept.group !== group) {
        kept.group = group;
        this.#look(measured, measured.places[n], level);
        const { contrast, sigma, isWhole } = this.#across;
        Object.assign(kept, { contrast, sigma, isWhole });
      }
      // A look too coarse for what it finds contradicts the finer one: that one stands.
      if (level > 0 && kept.sigma < 1) return;
      const scale = 1 << level;
      measured.contrasts[n] = kept.contrast;
      measured.sigmas[n] = Math.sqrt(Math.max(0, (kept.sigma * scale) ** 2 - ownVariance(scale)));
      if (kept.isWhole) return;
    }
  }

  #look({ contour, line }: MeasuredContour, place: number, level: number): void {
    const scale = 1 << level;
    const slots = this.#slots;
    findCrossings(slots, this.#size, line, place, -1, scale, contour.a, this.#before);
    findCrossings(slots, this.#size, line, place, 1, scale, contour.b, this.#after);
    this.#profile.fill(place, level);
    this.#across.read(this.#profile.values, this.#before, this.#after);
  }
}

/** A few thousand places between two pauses. */
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
