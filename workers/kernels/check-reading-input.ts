import type { ReadingWishes } from '../../app/model/reading.ts';
import { leastSizeMm, mostSizeMm } from '../../app/model/smallest-sizes.ts';
import type { ReadPictureInput } from './read-picture.ts';

/** More strokes than this are a slip of the program, not a painter's. */
const mostStrokes = 500;

function checkSubject(strokes: NonNullable<ReadingWishes['subject']>): void {
  const sound = strokes.every(
    ({ path, brush }) =>
      brush >= 0 && brush <= 2 && path.length > 0 && path.flat().every(Number.isFinite),
  );
  const inOrder = strokes.every(({ mode }, i) => (mode === 'circle') === (i === 0));
  if (!sound || !inOrder || strokes.length > mostStrokes) {
    throw new RangeError('The subject is circled once, then corrected. Circle it anew.');
  }
}

function checkWhites(strokes: NonNullable<ReadingWishes['whites']>): void {
  const sound = strokes.every(
    ({ path, brush }) => brush >= 0 && brush <= 2 && path.flat().every(Number.isFinite),
  );
  if (!sound || strokes.length > mostStrokes) {
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
  if (bands !== undefined && !(Number.isInteger(bands) && bands >= 2 && bands <= 7)) {
    throw new RangeError('A value study has 2 to 7 values. Choose a number between them.');
  }
  if (limits && !(limits.length <= 6 && limits.every((limit) => limit > 0 && limit < 100))) {
    throw new RangeError('Limits between values lie between black and white, six at most.');
  }
  if (families !== undefined && !(Number.isInteger(families) && families >= 1 && families <= 6)) {
    throw new RangeError(
      'A picture is read in 1 to 6 colour families. Choose a number between them.',
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
