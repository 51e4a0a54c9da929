import type { Reading, ReadingWishes } from '../../app/model/reading.ts';
import { reserveWithin, smallestShapeMm } from '../../app/model/reading.ts';
import type { Stage } from '../../app/model/stage.ts';
import { plannedLightness, reservesOf } from '../../app/model/tone-range.ts';
import { checkReadingInput } from './check-reading-input.ts';
import { chooseFamilies } from './families/choose-families.ts';
import { colourCells } from './families/colour-cells.ts';
import { familiesOf } from './families/families-of.ts';
import { familyMap } from './families/family-map.ts';
import { pictureWarnings } from './picture-warnings.ts';
import type { LabPlanes } from './pixels/lab-planes.ts';
import { lightnessPlane } from './pixels/lightness.ts';
import type { ClippedShares, LinearRaster } from './pixels/linear-raster.ts';
import { simplify } from './pixels/simplify.ts';
import { bordersOf } from './shapes/borders.ts';
import { keptBands } from './shapes/kept-bands.ts';
import { KindTones } from './shapes/kind-tones.ts';
import { bandOfKind, familyOfKind, kindMapOf } from './shapes/kinds.ts';
import { mergeShapes } from './shapes/merge-shapes.ts';
import { shapeFacts, shareBelow } from './shapes/shape-facts.ts';
import { slotsOf } from './shapes/slots-of.ts';
import { bandMapOf } from './values/band-map.ts';
import { bandsOf } from './values/bands-of.ts';
import { chooseLimits } from './values/choose-limits.ts';
import { chooseRange } from './values/choose-range.ts';
import { lightnessHistogram } from './values/histogram.ts';
import { percentile } from './values/percentile.ts';
import { tonesPresent } from './values/tones-present.ts';

/** Named in every reading; raised when the same picture may be read otherwise. */
export const engine = 'reading-1';

/** Shapes under this square are too small for comfort, mm. */
const brokenMm = smallestShapeMm.second;

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

function areasOf(map: Uint8Array, group: (kind: number) => number): Uint32Array {
  const perKind = new Uint32Array(256);
  for (let i = 0; i < map.length; i++) {
    perKind[map[i] as number] = (perKind[map[i] as number] as number) + 1;
  }
  const areas = new Uint32Array(256);
  for (let kind = 0; kind < 256; kind++) {
    if (perKind[kind])
      areas[group(kind)] = (areas[group(kind)] as number) + (perKind[kind] as number);
  }
  return areas;
}

/** Bands, families and tones per pixel, before anything is merged. */
function sorted(planes: LabPlanes, unsimplified: Float32Array, input: ReadPictureInput) {
  const { wishes, darkest, paper } = input;
  const histogram = lightnessHistogram(planes.lightness);
  const tones = tonesPresent(lightnessHistogram(unsimplified));
  const chosen = chooseLimits(histogram, tones, wishes);
  const range = chooseRange(histogram, darkest, paper, wishes.range);
  return { histogram, chosen, range, bandMap: bandMapOf(planes.lightness, chosen.limits) };
}

/**
 * Reads a picture: values, colour families, shapes, what stays white and the borders between, with
 * what a painter should know about it. Deterministic. Throws a RangeError for bad input, and
 * whatever `checkpoint` throws.
 */
export async function readPicture(
  input: ReadPictureInput,
  checkpoint: Checkpoint,
): Promise<PictureReading> {
  checkReadingInput(input);
  const { raster, sheet, wishes, clipped } = input;
  const size = { width: raster.width, height: raster.height };
  const pxPerMm = Math.sqrt((size.width * size.height) / (sheet.widthMm * sheet.heightMm));
  const unsimplified = lightnessPlane(raster);
  await checkpoint(0.03, 'looking');
  const planes = await staged(simplify(raster, pxPerMm), checkpoint, 'looking', [0.03, 0.6, 30]);

  const { histogram, chosen, range, bandMap } = sorted(planes, unsimplified, input);
  await checkpoint(0.65, 'values');
  const cells = colourCells(planes);
  const centres = chooseFamilies(cells, wishes.families);
  await checkpoint(0.7, 'colours');
  const slotMap = kindMapOf(bandMap, familyMap(planes, centres, cells));
  const tones = new KindTones(slotMap, planes, range.lo, range.hi);
  await checkpoint(0.73, 'colours');

  const before = await staged(shapeFacts(slotMap, size), checkpoint, 'shapes', [0.73, 0.78, 5]);
  const brokenShare = shareBelow(before, (brokenMm * pxPerMm) ** 2);
  const bandCount = chosen.limits.length + 1;
  const whiteBands = new Set<number>();
  for (let band = 1; band <= bandCount; band++) {
    const mean = tones.meanOf((kind) => bandOfKind(kind) === band);
    if (mean && range.paper - plannedLightness(range, mean.tones) <= reserveWithin) {
      whiteBands.add(band);
    }
  }
  const merging = mergeShapes(slotMap, bandMap, size, tones, {
    shapePx: (smallestShapeMm.darks * pxPerMm) ** 2,
    accentPx: (smallestShapeMm.details * pxPerMm) ** 2,
    whiteBands,
    darkestBand: bandCount,
  });
  await staged(merging, checkpoint, 'shapes', [0.78, 0.88, 14]);

  const facts = await staged(shapeFacts(slotMap, size), checkpoint, 'shapes', [0.88, 0.91, 5]);
  const bandAreas = areasOf(slotMap, bandOfKind);
  const kept = keptBands(bandAreas, chosen.limits);
  const { families, was } = familiesOf(areasOf(slotMap, familyOfKind), tones);
  const bandNumber = (band: number): number => kept.findIndex((one) => one.was === band) + 1;
  const { slots, kinds } = slotsOf(facts, {
    tones,
    range,
    pxPerMm,
    bandNumber,
    familyNumber: (family) => was.indexOf(family) + 1,
  });
  const slotOfKind = Uint8Array.from({ length: 256 }, (_, kind) =>
    Math.max(0, kinds.indexOf(kind)),
  );
  const newBand = Uint8Array.from({ length: 256 }, (_, band) => bandNumber(band));
  for (let i = 0; i < slotMap.length; i++) {
    slotMap[i] = slotOfKind[slotMap[i] as number] as number;
    bandMap[i] = newBand[bandMap[i] as number] as number;
  }
  const borders = await staged(
    bordersOf(slotMap, unsimplified, size, pxPerMm),
    checkpoint,
    'shapes',
    [0.91, 1, Math.ceil(size.height / 64) + 2],
  );
  const reading: Omit<Reading, 'warnings'> = {
    engine,
    raster: size,
    sheet: { widthMm: sheet.widthMm, heightMm: sheet.heightMm },
    lightness: {
      histogram: Array.from(histogram),
      p5: percentile(histogram, 0.05),
      p50: percentile(histogram, 0.5),
      p95: percentile(histogram, 0.95),
    },
    bands: bandsOf(kept, bandAreas, tones, range),
    proposedBands: chosen.proposedBands,
    bandsWhy: chosen.why,
    families,
    slots,
    borders,
    reserves: reservesOf(slots),
    range,
    brokenShare,
  };
  const facing = { reading, clipped, wished: wishes.bands, tones: chosen.tones };
  return { reading: { ...reading, warnings: pictureWarnings(facing) }, slotMap, bandMap };
}
