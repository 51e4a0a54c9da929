import type { ReadingWishes, ToneRange } from '../../app/model/reading.ts';
import { chooseFamilies } from './families/choose-families.ts';
import { colourCells } from './families/colour-cells.ts';
import { familyMap } from './families/family-map.ts';
import { lightnessPlane } from './pixels/lightness.ts';
import type { LinearRaster } from './pixels/linear-raster.ts';
import { simplify } from './pixels/simplify.ts';
import { KindTones } from './shapes/kind-tones.ts';
import { kindMapOf } from './shapes/kinds.ts';
import { bandMapOf } from './values/band-map.ts';
import { type ChosenLimits, chooseLimits } from './values/choose-limits.ts';
import { chooseRange } from './values/choose-range.ts';
import { lightnessHistogram } from './values/histogram.ts';
import { tonesPresent } from './values/tones-present.ts';

export interface SortedPixels {
  /** Of simplified lightness. */
  readonly histogram: Uint32Array;
  readonly range: ToneRange;
  readonly chosen: ChosenLimits;
  /** Band (1..) and kind (band and family) of every pixel. */
  readonly bandMap: Uint8Array;
  readonly kindMap: Uint8Array;
  readonly tones: KindTones;
}

export interface SortSettings {
  readonly raster: LinearRaster;
  readonly pxPerMm: number;
  readonly wishes: ReadingWishes;
  readonly darkest: number;
  readonly paper: number;
}

/**
 * Every pixel to its band and colour family, before shapes are looked at. The simplified planes live
 * only in here: with the raster they are most of the memory a reading takes.
 */
export function* sortPixels(settings: SortSettings): Generator<void, SortedPixels> {
  const { raster, pxPerMm, wishes, darkest, paper } = settings;
  const tonesSeen = tonesPresent(lightnessHistogram(lightnessPlane(raster)));
  yield;
  const planes = yield* simplify(raster, pxPerMm);
  const histogram = lightnessHistogram(planes.lightness);
  const range = chooseRange(histogram, darkest, paper, wishes.range);
  const chosen = chooseLimits(histogram, tonesSeen, range, wishes);
  const bandMap = bandMapOf(planes.lightness, chosen.limits);
  yield;
  const cells = colourCells(planes);
  yield;
  const centres = chooseFamilies(cells, wishes.families);
  const families = familyMap(planes, centres, cells);
  yield;
  const kindMap = kindMapOf(bandMap, families);
  const tones = new KindTones(kindMap, planes, range.lo, range.hi);
  return { histogram, range, chosen, bandMap, kindMap, tones };
}
