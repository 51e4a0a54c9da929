import type { ReadingWishes, ToneRange } from '../../app/model/reading.ts';
import { chooseFamilies } from './families/choose-families.ts';
import { colourCells } from './families/colour-cells.ts';
import { editFamilies } from './families/edit-families.ts';
import { familyMap } from './families/family-map.ts';
import { familyPlaces } from './families/family-places.ts';
import type { LabPlanes } from './pixels/lab-planes.ts';
import type { LinearRaster } from './pixels/linear-raster.ts';
import { lightnessPlane } from './pixels/linear-raster.ts';
import { KindTones } from './shapes/kind-tones.ts';
import { kindMapOf } from './shapes/kinds.ts';
import { bandMapOf } from './values/band-map.ts';
import { type ChosenLimits, chooseLimits } from './values/choose-limits.ts';
import { chooseRange } from './values/choose-range.ts';
import { binsOf, lightnessHistogram } from './values/histogram.ts';
import { tonesPresent } from './values/tones-present.ts';
import { brushWhites } from './whites/brush-whites.ts';

export interface SortedPixels {
  /** Of simplified lightness. */
  readonly histogram: Uint32Array;
  readonly range: ToneRange;
  readonly chosen: ChosenLimits;
  /** Band (1..) and kind (band and family) of every pixel. */
  readonly bandMap: Uint8Array;
  readonly kindMap: Uint8Array;
  /** Of the picture as it is, her whites left out of account. */
  readonly tones: KindTones;
  /** With her whites as kinds of their own; null where she brushed none. */
  readonly brushed: KindTones | null;
  /** Bin of simplified lightness of every pixel. */
  readonly lightnessMap: Uint8Array;
}

export interface SortSettings {
  /** What the planes were simplified from. */
  readonly raster: LinearRaster;
  readonly wishes: ReadingWishes;
  readonly darkest: number;
  readonly paper: number;
  /** 1 for the pixels of the subject; null while there is none. */
  readonly subject: Uint8Array | null;
}

/** Every pixel of the simplified planes to its band and colour family, before shapes are looked at. */
export function* sortPixels(
  planes: LabPlanes,
  { raster, wishes, darkest, paper, subject }: SortSettings,
): Generator<void, SortedPixels> {
  const tonesSeen = tonesPresent(lightnessHistogram(lightnessPlane(raster)));
  yield;
  const histogram = lightnessHistogram(planes.lightness);
  const range = chooseRange(histogram, darkest, paper, wishes.range);
  const chosen = chooseLimits(histogram, tonesSeen, range, wishes);
  const lightnessMap = binsOf(planes.lightness);
  const bandMap = bandMapOf(planes.lightness, chosen.limits);
  yield;
  const cells = colourCells(planes);
  yield;
  const found = familyPlaces(chooseFamilies(cells, wishes.families));
  const places = editFamilies(found, planes, cells, wishes.familyEdits ?? []);
  yield;
  const families = familyMap(planes, places, cells);
  yield;
  const kindMap = kindMapOf(bandMap, families, subject);
  yield;
  const tones = new KindTones(kindMap, planes, range.lo, range.hi);
  const strokes = wishes.whites ?? [];
  brushWhites({ kinds: kindMap, bands: bandMap }, strokes, raster, tones, range);
  const brushed = strokes.length > 0 ? new KindTones(kindMap, planes, range.lo, range.hi) : null;
  return { histogram, range, chosen, bandMap, kindMap, tones, brushed, lightnessMap };
}
