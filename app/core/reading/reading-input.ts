import { fewestBands, mostBands, mostFamilies } from '../limits.ts';
import type { ClippedShares, LinearRaster } from '../raster/linear-raster.ts';
import { Room } from '../raster/room.ts';
import { type Simplify, simplify } from '../raster/simplify.ts';
import { areSoundStrokes } from '../reference/photo-stroke.ts';
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
    throw new RangeError('The subject is circled once, then corrected. Circle it anew.');
  }
}

function checkWhites(strokes: NonNullable<ReadingWishes['whites']>): void {
  if (!areSoundStrokes(strokes)) {
    throw new RangeError('Your strokes over the whites can not be read. Take the last ones back.');
  }
}

function checkColoursAndShapes({ familyEdits = [], smallest }: ReadingWishes): void {
  const colours = familyEdits.map((edit) => {
    if ('part' in edit) return [edit.part];
    return edit.join === 'all' ? [] : edit.join;
  });
  if (!colours.flat(2).every(Number.isFinite)) {
    throw new RangeError('A change of the colours names no colour. Choose the colours anew.');
  }
  const sizes = smallest ? [smallest.firstWash, smallest.second, smallest.darks] : [];
  if (!sizes.every((mm) => mm >= leastSizeMm && mm <= mostSizeMm)) {
    throw new RangeError(
      `The smallest shape of a wash measures ${leastSizeMm} to ${mostSizeMm} mm. Set it anew.`,
    );
  }
}

function checkWishes({ bands, limits, families, subject, whites }: ReadingWishes): void {
  if (subject) checkSubject(subject);
  if (whites) checkWhites(whites);
  if (
    bands !== undefined &&
    !(Number.isInteger(bands) && bands >= fewestBands && bands <= mostBands)
  ) {
    throw new RangeError(
      `A value study has ${fewestBands} to ${mostBands} values. Choose a number between them.`,
    );
  }
  if (limits && !(limits.length < mostBands && limits.every((limit) => limit > 0 && limit < 100))) {
    throw new RangeError('Limits between values lie between black and white, six at most.');
  }
  if (
    families !== undefined &&
    !(Number.isInteger(families) && families >= 1 && families <= mostFamilies)
  ) {
    throw new RangeError(
      `A picture is read in 1 to ${mostFamilies} colour families. Choose a number between them.`,
    );
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
    throw new RangeError('The picture has no pixels. Choose another photo.');
  }
  if (!(sheet.widthMm > 0 && sheet.heightMm > 0)) {
    throw new RangeError('The sheet has no size. Give its width and height in mm.');
  }
  if (!(darkest >= 0 && darkest < paper && paper <= 100)) {
    throw new RangeError(
      'Paper is lighter than the darkest paint, and both lie between 0 and 100.',
    );
  }
  checkWishes(wishes);
  checkColoursAndShapes(wishes);
}
