import { mostFamilies, mostFamiliesWithSubject } from '../limits.ts';
import { type LabPlanes, type LinearRaster, lightnessPlane } from '../raster/linear-raster.ts';
import type { Room } from '../raster/room.ts';
import { familyMap } from './families/choose-families.ts';
import { editFamilies } from './families/edit-families.ts';
import { readFamilies } from './families/passage-families.ts';
import { findSurroundings } from './families/surroundings.ts';
import type { RangeMode, ReadingWishes, ToneRange } from './reading.ts';
import { CellTones, packCells } from './shapes/cells.ts';
import { toneRange } from './tone-range.ts';
import { type ChosenLimits, chooseLimits } from './values/choose-limits.ts';
import { bins, binsOf, countBins, lightnessOfBin, percentile } from './values/list-bands.ts';
import { type SubjectLimits, subjectLimits } from './values/subject-limits.ts';
import { brushWhites } from './whites/brush-whites.ts';
import { keepPaper } from './whites/keep-paper.ts';
import { restoreNarrowWhites } from './whites/narrow-whites.ts';

export interface SortedPixels {
  /** Of simplified lightness. */
  readonly histogram: Uint32Array;
  readonly range: ToneRange;
  readonly chosen: ChosenLimits;
  /** Those within the subject; null where the picture's hold there too. */
  readonly own: SubjectLimits | null;
  /** Band (1..) and cell (band and family) of every pixel. */
  readonly bandMap: Uint8Array;
  readonly cellMap: Uint8Array;
  /** Of the picture as it is, her whites left out of account. */
  readonly tones: CellTones;
  /** With her whites as cells of their own; null where she brushed none. */
  readonly brushed: CellTones | null;
  /** Bin of simplified lightness of every pixel. */
  readonly lightnessMap: Uint8Array;
  /** L* of every pixel of the raster, unsimplified. */
  readonly seen: Float32Array;
}

interface SortSettings {
  /** What the planes were simplified from. */
  readonly raster: LinearRaster;
  readonly wishes: ReadingWishes;
  readonly darkest: number;
  readonly paper: number;
  /** 1 for the pixels of the subject; null while there is none. */
  readonly subject: Uint8Array | null;
  readonly pxPerMm: number;
  /** Holds `seen` of the answer and what else is large, but for its maps. */
  readonly room: Room;
}

/** Every pixel of the simplified planes to its band and colour family, before shapes are looked at. */
export function* sortPixels(
  planes: LabPlanes,
  { raster, wishes, darkest, paper, subject, pxPerMm, room }: SortSettings,
): Generator<void, SortedPixels> {
  const pixels = planes.lightness.length;
  const seen = lightnessPlane(raster, room.floats(pixels));
  const seenBins = binsOf(seen, room.bytes(pixels));
  const tonesSeen = tonesPresent(countBins(seenBins));
  yield;
  const lightnessMap = binsOf(planes.lightness);
  const range = chooseRange(countBins(lightnessMap), darkest, paper, wishes.range);
  yield;
  const whites = room.bytes(pixels);
  restoreNarrowWhites(planes, lightnessMap, seenBins, raster, range, pxPerMm, whites);
  const histogram = countBins(lightnessMap);
  yield;
  const around = yield* findSurroundings(planes, raster, pxPerMm);
  const found = readFamilies(planes, around, subject, wishes.families);
  yield;
  const most = subject ? mostFamiliesWithSubject : mostFamilies;
  const edited = editFamilies(found, planes, wishes.familyEdits ?? [], most);
  yield;
  const [first] = found[0].places;
  const isOneColour = found.every(({ places }) => places.every((family) => family === first));
  const chosen = chooseLimits(histogram, tonesSeen, range, wishes, isOneColour);
  const bandMap = bandMapOf(lightnessMap, chosen.limits);
  // Limits she sets hold everywhere.
  const own =
    subject && !wishes.limits
      ? subjectLimits(lightnessMap, subject, histogram, chosen.limits, range)
      : null;
  if (subject && own) bandSubject(bandMap, lightnessMap, subject, own);
  yield;
  const families = familyMap(planes, edited, room.bytes(pixels));
  yield;
  const cellMap = packCells(bandMap, families, subject);
  keepPaper(cellMap, planes, range, raster, pxPerMm);
  yield;
  const tones = new CellTones(cellMap, planes);
  const strokes = wishes.whites ?? [];
  brushWhites({ cells: cellMap, bands: bandMap }, strokes, raster, tones, range);
  const brushed = strokes.length > 0 ? new CellTones(cellMap, planes) : null;
  return { histogram, range, chosen, own, bandMap, cellMap, tones, brushed, lightnessMap, seen };
}

/** A tone is there if this share of the picture has it: borders between tones are no tones. */
const leastShare = 0.002;
/** Bins that count as one tone, about 2 L*: noise of a camera or a lossy file. */
const tonesWidth = 5;

/**
 * How many tones can be told apart in the picture as it came, from the histogram of its unsimplified
 * lightness: smoothing invents tones on the borders of flat areas, and those must not become bands.
 */
export function tonesPresent(unsimplified: ArrayLike<number>): number {
  let total = 0;
  for (let bin = 0; bin < unsimplified.length; bin++) total += unsimplified[bin];
  let tones = 0;
  for (let bin = 0; bin < unsimplified.length; ) {
    let counted = 0;
    if (!unsimplified[bin]) {
      bin++;
      continue;
    }
    const end = bin + tonesWidth;
    for (; bin < end && bin < unsimplified.length; bin++) counted += unsimplified[bin];
    if (counted >= leastShare * total) tones++;
  }
  return Math.max(1, tones);
}

/**
 * How the picture is brought onto the sheet: as photographed, unless she wished it opened up. `darkest` and `paper`
 * are L* of her paints and paper.
 */
export function chooseRange(
  histogram: ArrayLike<number>,
  darkest: number,
  paper: number,
  wish: RangeMode = 'photographed',
): ToneRange {
  const lo = percentile(histogram, 0.01);
  const hi = percentile(histogram, 0.99);
  return toneRange(wish, lo, hi, darkest, paper);
}

/** Band, 1 is the lightest, of every bin; `limits` in L* from dark to light. */
export function bandOfBins(limits: readonly number[]): Uint8Array {
  return Uint8Array.from({ length: bins }, (_, bin) => {
    const above = limits.filter((limit) => limit > lightnessOfBin(bin)).length;
    return above + 1;
  });
}

/** Band of every pixel by the bin of its lightness, so that map and histogram never disagree. */
export function bandMapOf(lightnessMap: Uint8Array, limits: readonly number[]): Uint8Array {
  const bands = bandOfBins(limits);
  const map = new Uint8Array(lightnessMap.length);
  for (let i = 0; i < map.length; i++) map[i] = bands[lightnessMap[i]];
  return map;
}

/** Sorts the subject's pixels into bands anew, by its own limits. */
function bandSubject(
  bandMap: Uint8Array,
  lightnessMap: Uint8Array,
  isSubject: Uint8Array,
  { limits, bands }: SubjectLimits,
): void {
  const band = bandOfBins(limits).map((step) => bands[step - 1]);
  for (let i = 0; i < bandMap.length; i++) {
    if (isSubject[i]) bandMap[i] = band[lightnessMap[i]];
  }
}
