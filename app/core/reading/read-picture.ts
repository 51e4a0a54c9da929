import { smallestShapeMm } from '../limits.ts';
import type { LinearRaster } from '../raster/linear-raster.ts';
import { computePxPerMm, type PixelSize } from '../raster/size.ts';
import { colourSquares, vividColours } from './colour-squares.ts';
import { findDetails } from './details/find-details.ts';
import { findEdges } from './edges/measure-edges.ts';
import { listFamilies } from './families/list-families.ts';
import { smallestSizes } from './masses.ts';
import { pictureWarnings } from './picture-warnings.ts';
import { type Band, type Reading, readingEngine, type ToneRange } from './reading.ts';
import {
  checkReadingInput,
  plainTools,
  type ReadingTools,
  type ReadPictureInput,
} from './reading-input.ts';
import { type Checkpoint, staged } from './reading-stages.ts';
import {
  bandOfCell,
  brushedBand,
  type CellTones,
  familyOfCell,
  passageOfCell,
  sumAreasByGroup,
} from './shapes/cells.ts';
import { groundDetail } from './shapes/ground-detail.ts';
import {
  listSlots,
  type ShapeFacts,
  shapeFacts,
  slotSlopes,
  tooSmallShare,
} from './shapes/list-slots.ts';
import { mergeShapes, mergeSizes } from './shapes/merge-shapes.ts';
import { countMasses } from './shapes/wash-masses.ts';
import { type SortedPixels, sortPixels } from './sort-pixels.ts';
import { readPassages } from './subject/find-subject.ts';
import { proposeSubject } from './subject/propose-subject.ts';
import type { SubjectFacts, SubjectStroke } from './subject/subject.ts';
import { keptBands, listBands, percentile } from './values/list-bands.ts';
import type { SubjectLimits } from './values/subject-limits.ts';
import { edgesOfBrushed, withBrushedWhites } from './whites/brush-whites.ts';
import { findWhites } from './whites/find-whites.ts';
import { reservesIn } from './whites/whites.ts';

export interface PictureReading {
  readonly reading: Reading;
  /** Index into `reading.slots` for every pixel. */
  readonly slotMap: Uint8Array;
  /** 1..k for every pixel, after merging. */
  readonly bandMap: Uint8Array;
  /** Simplified lightness of every pixel, round(L* x 2.55). */
  readonly lightnessMap: Uint8Array;
}

interface SortedPassages extends SortedPixels {
  readonly subject: SubjectFacts | null;
  /** A circle round what stands out; null where nothing does, or there is a subject. */
  readonly proposed: SubjectStroke | null;
  /** 1 for the subject's pixels; null without one. */
  readonly mask: Uint8Array | null;
  /** The input's, or a copy with its ground made plain. */
  readonly raster: LinearRaster;
}

/** The simplified planes live only in here: with the raster they are most of the memory it takes. */
async function sortedPixels(
  input: ReadPictureInput,
  { room, simplify }: ReadingTools,
  pxPerMm: number,
  checkpoint: Checkpoint,
): Promise<SortedPassages> {
  const mark = room.mark();
  const planes = await staged(simplify(input.raster, pxPerMm), checkpoint, 'simplifying');
  const parting = readPassages(input.raster, planes, input.wishes, pxPerMm);
  const found = await staged(parting, checkpoint, 'passages');
  const proposing = found.mask ? null : proposeSubject(planes, input.raster, pxPerMm);
  const proposed = proposing && (await staged(proposing, checkpoint, 'what stands out'));
  const settings = { ...input, raster: found.raster, subject: found.mask, pxPerMm, room };
  const sorted = await staged(sortPixels(planes, settings), checkpoint, 'bands and families');
  room.giveBack(mark);
  const seen = room.floats(sorted.seen.length); // moved to where the planes lay
  seen.set(sorted.seen);
  return {
    ...sorted,
    seen,
    proposed,
    subject: found.facts,
    mask: found.mask,
    raster: found.raster,
  };
}

/** The reading's lists, and its maps in the lists' numbers; `cellMap` and `bandMap` are renumbered. */
function listed(sorted: SortedPassages, facts: ShapeFacts, pxPerMm: number) {
  const { histogram, range, chosen, own, bandMap, cellMap, tones, brushed, subject } = sorted;
  const bandAreas = withBrushedWhites(sumAreasByGroup(facts, bandOfCell), tones);
  const kept = keptBands(bandAreas, chosen.limits);
  const areasInSubject = sumAreasByGroup(facts, (cell) =>
    isInSubject(cell) ? bandOfCell(cell) : notCounted,
  );
  const { families, was } = listFamilies(sumAreasByGroup(facts, familyOfCell), tones);
  const bandNumber = (band: number): number =>
    band === brushedBand ? 1 : kept.findIndex((one) => one.was === band) + 1;
  const familyNumber = (family: number): number => was.indexOf(family) + 1;
  const { slots, cells } = listSlots(facts, {
    tones,
    brushed,
    range,
    pxPerMm,
    bandNumber,
    familyNumber,
    hasSubject: subject !== null,
  });
  const slotOf = Uint8Array.from({ length: 256 }, (_, cell) => Math.max(0, cells.indexOf(cell)));
  const newBand = Uint8Array.from({ length: 256 }, (_, band) => bandNumber(band));
  for (let i = 0; i < cellMap.length; i++) {
    cellMap[i] = slotOf[cellMap[i]];
    bandMap[i] = newBand[bandMap[i]];
  }
  const lightness = {
    histogram: Array.from(histogram),
    p5: percentile(histogram, 0.05),
    p50: percentile(histogram, 0.5),
    p95: percentile(histogram, 0.95),
  };
  const bands = listBands(kept, bandAreas, tones, range);
  const subjectBands = own ? listSubjectBands(own, areasInSubject, tones, range, bandNumber) : [];
  return {
    lightness,
    bands,
    ...(subjectBands.length > 0 && { subjectBands }),
    families,
    slots,
    range,
    subject,
  };
}

/** No band has this number. */
const notCounted = 255;
const isInSubject = (cell: number): boolean => passageOfCell(cell) === 1;

/** The subject's own bands by the numbers of the picture's. `areas`: its px after merging, by old number. */
function listSubjectBands(
  own: SubjectLimits,
  areas: ArrayLike<number>,
  tones: CellTones,
  range: ToneRange,
  bandNumber: (band: number) => number,
): Band[] {
  const byStep = [0, ...own.bands.map((band) => areas[band])];
  const kept = keptBands(byStep, own.limits).map((step) => {
    const was = own.bands[step.was - 1];
    return { ...step, was, band: bandNumber(was) };
  });
  return listBands(kept, areas, tones, range, isInSubject);
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
  const pxPerMm = computePxPerMm(size, sheet);
  const tools = input.tools ?? plainTools();
  const sorted = await sortedPixels(input, tools, pxPerMm, checkpoint);
  const { chosen, bandMap, cellMap, tones, lightnessMap } = sorted;

  const before = await staged(shapeFacts(cellMap, size), checkpoint, 'first shapes');
  const broken = (smallestShapeMm.second * pxPerMm) ** 2;
  const brokenShare = tooSmallShare(before, broken, smallestShapeMm.darks * pxPerMm);
  const sizes = mergeSizes(chosen.limits.length + 1, pxPerMm, smallest.darks);
  const timesAt = sorted.mask ? groundDetail(sorted.mask, size, pxPerMm) : undefined;
  const merging = mergeShapes(cellMap, bandMap, size, tones, { ...sizes, timesAt });
  await staged(merging, checkpoint, 'merging');
  const facts = await staged(shapeFacts(cellMap, size), checkpoint, 'shapes');
  const named = listed(sorted, facts, pxPerMm);
  const sloping = slotSlopes(cellMap, lightnessMap, size, named.slots.length);
  const lies = await staged(sloping, checkpoint, 'slopes');

  const ruling = colourSquares(cellMap, sorted.raster, pxPerMm, named.slots.length);
  const squares = await staged(ruling, checkpoint, 'squares');
  const vivid = vividColours(squares, named.slots.length);
  const slots = named.slots.map((slot, i) => ({
    ...slot,
    ...lies[i],
    ...(vivid[i] && { vivid: vivid[i] }),
  }));
  const lists = { ...named, slots };
  const counting = countMasses(cellMap, lists.slots, size, pxPerMm, smallest);
  const masses = await staged(counting, checkpoint, 'masses');
  const measuring = findEdges(cellMap, sorted.seen, sorted.raster, pxPerMm);
  const measured = await staged(measuring, checkpoint, 'edges');
  const { edges, borders } = edgesOfBrushed(measured, lists.slots);
  const shapes = { slotMap: cellMap, slots: lists.slots, edges, borders };
  const listing = findWhites(shapes, size, pxPerMm);
  const whites = await staged(listing, checkpoint, 'whites');
  const looking = findDetails(
    {
      raster: sorted.raster,
      slotMap: cellMap,
      slots: lists.slots,
      squares,
      range: lists.range,
      subject: sorted.mask,
      proposed: sorted.proposed?.path ?? null,
      room: tools.room,
    },
    pxPerMm,
  );
  const details = await staged(looking, checkpoint, 'details');
  const reading: Omit<Reading, 'warnings'> = {
    engine: readingEngine,
    raster: size,
    sheet: { widthMm: sheet.widthMm, heightMm: sheet.heightMm },
    ...lists,
    squares,
    details,
    proposedSubject: sorted.proposed,
    proposedBands: chosen.proposedBands,
    bandsWhy: chosen.why,
    borders,
    edges,
    whites,
    reserves: reservesIn(whites, lists.slots),
    masses,
    brokenShare,
  };
  await checkpoint(1, 'shapes', 'details');
  const known = { reading, clipped, wished: wishes.bands, tones: chosen.tones };
  return {
    reading: { ...reading, warnings: pictureWarnings(known) },
    slotMap: cellMap,
    bandMap,
    lightnessMap,
  };
}
