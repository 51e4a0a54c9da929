import { smallestShapeMm } from '../../app/model/limits.ts';
import type { PixelSize } from '../../app/model/pixel-size.ts';
import type { Reading, ReadingWishes } from '../../app/model/reading.ts';
import { readingEngine } from '../../app/model/reading.ts';
import { smallestSizes } from '../../app/model/smallest-sizes.ts';
import type { Stage } from '../../app/model/stage.ts';
import type { SubjectFacts } from '../../app/model/subject.ts';
import { reservesIn } from '../../app/model/whites.ts';
import { checkReadingInput } from './check-reading-input.ts';
import { edgesOf } from './edges/edges-of.ts';
import { familiesOf } from './families/families-of.ts';
import { pictureWarnings } from './picture-warnings.ts';
import type { ClippedShares, LinearRaster } from './pixels/linear-raster.ts';
import { lightnessPlane } from './pixels/linear-raster.ts';
import { simplify } from './pixels/simplify.ts';
import { readPassages } from './read-passages.ts';
import { keptBands } from './shapes/kept-bands.ts';
import { areasBy } from './shapes/kind-areas.ts';
import { bandOfKind, brushedBand, familyOfKind } from './shapes/kinds.ts';
import { countMasses } from './shapes/masses-of.ts';
import { mergeShapes } from './shapes/merge-shapes.ts';
import { mergeSizes } from './shapes/merge-sizes.ts';
import { type ShapeFacts, shapeFacts, tooSmallShare } from './shapes/shape-facts.ts';
import { slotSlopes } from './shapes/slot-slopes.ts';
import { slotsOf } from './shapes/slots-of.ts';
import { type SortedPixels, sortPixels } from './sort-pixels.ts';
import { bandsOf } from './values/bands-of.ts';
import { percentile } from './values/percentile.ts';
import { edgesOfBrushed } from './whites/edges-of-brushed.ts';
import { whitesOf } from './whites/whites-of.ts';
import { withBrushedWhites } from './whites/with-brushed-whites.ts';

export interface ReadPictureInput {
  /** The cropped reference; it is left unchanged. */
  readonly raster: LinearRaster;
  readonly sheet: { readonly widthMm: number; readonly heightMm: number };
  readonly wishes: ReadingWishes;
  /** L* of the darkest her paints reach, and of the paper. */
  readonly darkest: number;
  readonly paper: number;
  readonly clipped: ClippedShares;
}

export interface PictureReading {
  readonly reading: Reading;
  /** Index into `reading.slots` for every pixel. */
  readonly slotMap: Uint8Array;
  /** 1..k for every pixel, after merging. */
  readonly bandMap: Uint8Array;
  /** Simplified lightness of every pixel, round(L* x 2.55). */
  readonly lightnessMap: Uint8Array;
}

/** Awaited between pieces of some milliseconds; throws to stop. part: 0..1 of the reading. */
export type Checkpoint = (part: number, stage: Stage) => Promise<void>;

/** Runs the pieces of one stage, a checkpoint after each. */
async function staged<T>(
  pieces: Generator<void, T>,
  checkpoint: Checkpoint,
  stage: Stage,
  [from, to, expected]: readonly [from: number, to: number, expectedPieces: number],
): Promise<T> {
  for (let done = 1; ; done++) {
    const piece = pieces.next();
    await checkpoint(from + (to - from) * Math.min(1, done / expected), stage);
    if (piece.done) return piece.value;
  }
}

interface SortedPassages extends SortedPixels {
  readonly subject: SubjectFacts | null;
  /** The input's, or a copy with its ground made plain. */
  readonly raster: LinearRaster;
}

/** The simplified planes live only in here: with the raster they are most of the memory it takes. */
async function sortedPixels(
  input: ReadPictureInput,
  pxPerMm: number,
  checkpoint: Checkpoint,
): Promise<SortedPassages> {
  const pieces = simplify(input.raster, pxPerMm);
  const planes = await staged(pieces, checkpoint, 'looking', [0, 0.55, 29]);
  const parting = readPassages(input.raster, planes, input.wishes, pxPerMm);
  const found = await staged(parting, checkpoint, 'looking', [0.55, 0.58, 16]);
  const settings = { ...input, raster: found.raster, subject: found.mask };
  const sorted = await staged(sortPixels(planes, settings), checkpoint, 'colours', [0.58, 0.7, 6]);
  return { ...sorted, subject: found.facts, raster: found.raster };
}

/** The reading's lists, and its maps in the lists' numbers; `kindMap` and `bandMap` are renumbered. */
function listed(sorted: SortedPassages, facts: ShapeFacts, pxPerMm: number) {
  const { histogram, range, chosen, bandMap, kindMap, tones, brushed, subject } = sorted;
  const bandAreas = withBrushedWhites(areasBy(kindMap, bandOfKind), tones);
  const kept = keptBands(bandAreas, chosen.limits);
  const { families, was } = familiesOf(areasBy(kindMap, familyOfKind), tones);
  const bandNumber = (band: number): number =>
    band === brushedBand ? 1 : kept.findIndex((one) => one.was === band) + 1;
  const familyNumber = (family: number): number => was.indexOf(family) + 1;
  const { slots, kinds } = slotsOf(facts, {
    tones,
    brushed,
    range,
    pxPerMm,
    bandNumber,
    familyNumber,
    hasSubject: subject !== null,
  });
  const slotOf = Uint8Array.from({ length: 256 }, (_, kind) => Math.max(0, kinds.indexOf(kind)));
  const newBand = Uint8Array.from({ length: 256 }, (_, band) => bandNumber(band));
  for (let i = 0; i < kindMap.length; i++) {
    kindMap[i] = slotOf[kindMap[i] as number] as number;
    bandMap[i] = newBand[bandMap[i] as number] as number;
  }
  const lightness = {
    histogram: Array.from(histogram),
    p5: percentile(histogram, 0.05),
    p50: percentile(histogram, 0.5),
    p95: percentile(histogram, 0.95),
  };
  const bands = bandsOf(kept, bandAreas, tones, range);
  return { lightness, bands, families, slots, range, subject };
}

/**
 * Reads a picture: values, colour families, shapes, what stays white, the edges between, with
 * what a painter should know about it. Deterministic. Throws a RangeError for bad input, and
 * whatever `checkpoint` throws.
 */
export async function readPicture(
  input: ReadPictureInput,
  checkpoint: Checkpoint,
): Promise<PictureReading> {
  checkReadingInput(input);
  const { raster, sheet, wishes, clipped } = input;
  const smallest = smallestSizes(wishes.smallest);
  const size: PixelSize = { width: raster.width, height: raster.height };
  const pxPerMm = Math.sqrt((size.width * size.height) / (sheet.widthMm * sheet.heightMm));
  const sorted = await sortedPixels(input, pxPerMm, checkpoint);
  const { chosen, range, bandMap, kindMap, tones, lightnessMap } = sorted;

  const before = await staged(shapeFacts(kindMap, size), checkpoint, 'shapes', [0.7, 0.75, 5]);
  const broken = (smallestShapeMm.second * pxPerMm) ** 2;
  const brokenShare = tooSmallShare(before, broken, smallestShapeMm.darks * pxPerMm);
  const sizes = mergeSizes(tones, range, chosen.limits.length + 1, pxPerMm, smallest.darks);
  const merging = mergeShapes(kindMap, bandMap, size, tones, sizes);
  await staged(merging, checkpoint, 'shapes', [0.75, 0.82, 14]);
  const facts = await staged(shapeFacts(kindMap, size), checkpoint, 'shapes', [0.82, 0.85, 5]);
  const named = listed(sorted, facts, pxPerMm);
  const sloping = slotSlopes(kindMap, lightnessMap, size, named.slots.length);
  const lies = await staged(sloping, checkpoint, 'shapes', [0.85, 0.86, 5]);
  const lists = { ...named, slots: named.slots.map((slot, i) => ({ ...slot, ...lies[i] })) };

  const counting = countMasses(kindMap, lists.slots, size, pxPerMm, smallest);
  const masses = await staged(counting, checkpoint, 'shapes', [0.86, 0.9, 24]);
  const measuring = edgesOf(kindMap, lightnessPlane(sorted.raster), sorted.raster, pxPerMm);
  const measured = await staged(measuring, checkpoint, 'shapes', [0.9, 0.99, 20]);
  const { edges, borders } = edgesOfBrushed(measured, lists.slots);
  const shapes = { slotMap: kindMap, slots: lists.slots, edges, borders };
  const listing = whitesOf(shapes, size, pxPerMm);
  const whites = await staged(listing, checkpoint, 'shapes', [0.99, 1, 7]);
  const reading: Omit<Reading, 'warnings'> = {
    engine: readingEngine,
    raster: size,
    sheet: { widthMm: sheet.widthMm, heightMm: sheet.heightMm },
    ...lists,
    proposedBands: chosen.proposedBands,
    bandsWhy: chosen.why,
    borders,
    edges,
    whites,
    reserves: reservesIn(whites, lists.slots),
    masses,
    brokenShare,
  };
  await checkpoint(1, 'shapes');
  const known = { reading, clipped, wished: wishes.bands, tones: chosen.tones };
  return {
    reading: { ...reading, warnings: pictureWarnings(known) },
    slotMap: kindMap,
    bandMap,
    lightnessMap,
  };
}
