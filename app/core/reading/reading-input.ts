import { fewestBands, mostBands, mostFamilies } from '../limits.ts';
import type { ClippedShares, LinearRaster } from '../raster/linear-raster.ts';
import { Room } from '../raster/room.ts';
import { type Simplify, simplify } from '../raster/simplify.ts';
import { areSoundStrokes } from '../reference/photo-stroke.ts';
import {
  noPixels,
  noSheet,
  noSuchFamilies,
  noSuchLimits,
  noSuchShape,
  noSuchValues,
  unclearColours,
  unclearSubject,
  unclearWhites,
} from '../words/faults.ts';
import { leastSizeMm, mostSizeMm } from './masses.ts';
import type { ReadingWishes } from './reading.ts';

/** What a reading works with. */
export interface ReadingTools {
  /** The reading has it for itself; nothing of the answer lies in it. */
  readonly room: Room;
  readonly simplify: Simplify;
}

export const plainTools = (): ReadingTools => ({ room: new Room(), simplify });

export interface ReadPictureInput {
  /** The cropped reference; it is left unchanged. */
  readonly raster: LinearRaster;
  readonly sheet: { readonly widthMm: number; readonly heightMm: number };
  readonly wishes: ReadingWishes;
  /** L* of the darkest her paints reach, and of the paper. */
  readonly darkest: number;
  readonly paper: number;
  readonly clipped: ClippedShares;
  /** Quicker ones, where the caller has some; the raster may lie in their room. */
  readonly tools?: ReadingTools;
}

function checkSubject(strokes: NonNullable<ReadingWishes['subject']>): void {
  const inOrder = strokes.every(
    ({ mode, path }, i) => path.length > 0 && (mode === 'circle') === (i === 0),
  );
  if (!inOrder || !areSoundStrokes(strokes)) {
    throw new RangeError(unclearSubject);
  }
}

function checkWhites(strokes: NonNullable<ReadingWishes['whites']>): void {
  if (!areSoundStrokes(strokes)) {
    throw new RangeError(unclearWhites);
  }
}

function checkColoursAndShapes({ familyEdits = [], smallest }: ReadingWishes): void {
  const colours = familyEdits.map((edit) => {
    if ('part' in edit) return [edit.part];
    return edit.join === 'all' ? [] : edit.join;
  });
  if (!colours.flat(2).every(Number.isFinite)) {
    throw new RangeError(unclearColours);
  }
  const sizes = smallest ? [smallest.firstWash, smallest.second, smallest.darks] : [];
  if (!sizes.every((mm) => mm >= leastSizeMm && mm <= mostSizeMm)) {
    throw new RangeError(noSuchShape(leastSizeMm, mostSizeMm));
  }
}

function checkWishes({ bands, limits, families, subject, whites }: ReadingWishes): void {
  if (subject) checkSubject(subject);
  if (whites) checkWhites(whites);
  if (
    bands !== undefined &&
    !(Number.isInteger(bands) && bands >= fewestBands && bands <= mostBands)
  ) {
    throw new RangeError(noSuchValues);
  }
  if (limits && !(limits.length < mostBands && limits.every((limit) => limit > 0 && limit < 100))) {
    throw new RangeError(noSuchLimits);
  }
  if (
    families !== undefined &&
    !(Number.isInteger(families) && families >= 1 && families <= mostFamilies)
  ) {
    throw new RangeError(noSuchFamilies);
  }
}

/** Once, at the door: everything behind it relies on these sizes. Throws a RangeError. */
export function checkReadingInput({
  raster,
  sheet,
  wishes,
  darkest,
  paper,
}: ReadPictureInput): void {
  const pixels = raster.width * raster.height;
  const planes = [raster.red, raster.green, raster.blue];
  if (!(pixels >= 1) || planes.some((plane) => plane.length !== pixels)) {
    throw new RangeError(noPixels);
  }
  if (!(sheet.widthMm > 0 && sheet.heightMm > 0)) {
    throw new RangeError(noSheet);
  }
  if (!(darkest >= 0 && darkest < paper && paper <= 100)) {
    throw new RangeError(
      'Paper is lighter than the darkest paint, and both lie between 0 and 100.',
    );
  }
  checkWishes(wishes);
  checkColoursAndShapes(wishes);
}
