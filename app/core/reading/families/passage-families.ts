import { familiesPerPassage } from '../../limits.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import { familiesPerBand } from '../shapes/cells.ts';
import { chooseFamilies, type FamilyPlaces, familyPlaces, leastApart } from './choose-families.ts';
import { binColours, type ColourBins, type CountedPixels } from './colour-bins.ts';
import type { HueCentre } from './hue-centres.ts';
import type { Surroundings } from './surroundings.ts';

/** The colours of one passage and the families they are read in; families of one number are one. */
export interface PassageFamilies {
  readonly cells: ColourBins;
  readonly places: FamilyPlaces;
  /** Its pixels; null: all. */
  readonly where: CountedPixels | null;
}

/** The nearest of these centres that is the same colour to the eye; -1 where there is none. */
function sameColour(centres: readonly HueCentre[], [a, b]: HueCentre): number {
  let same = -1;
  let least = leastApart;
  for (const [n, [x, y]] of centres.entries()) {
    const distance = Math.hypot(a - x, b - y);
    if (distance >= least) continue;
    least = distance;
    same = n;
  }
  return same;
}

/**
 * The families of the subject and of its ground, each read for itself, in the ground's numbers where they are the
 * same colour. Ground first.
 */
function readApart(
  planes: LabPlanes,
  around: Surroundings,
  subject: Uint8Array,
): readonly PassageFamilies[] {
  const [ground, own] = [0, 1].map((value) => {
    const where = { map: subject, value };
    const cells = binColours(planes, around, where);
    const most = value === 1 ? familiesPerPassage.subject : familiesPerPassage.ground;
    return { where, cells, centres: chooseFamilies(cells, undefined, most) };
  });
  const all = [...ground.centres];
  const numbers = own.centres.map((centre): number => {
    const same = sameColour(ground.centres, centre);
    if (same >= 0) return same;
    return all.length < familiesPerBand ? all.push(centre) - 1 : nearestOf(all, centre);
  });
  const numbered = familyPlaces(own.centres).map((n) => numbers[n]);
  return [
    { where: ground.where, cells: ground.cells, places: familyPlaces(ground.centres) },
    { where: own.where, cells: own.cells, places: numbered },
  ];
}

/** Where there is no number left, the nearest colour must do. */
function nearestOf(centres: readonly HueCentre[], [a, b]: HueCentre): number {
  const distances = centres.map(([x, y]) => Math.hypot(a - x, b - y));
  return distances.indexOf(Math.min(...distances));
}

/**
 * The colour families of a picture, passage by passage; so many over the whole sheet where she wished a number.
 * `subject`: 1 for its pixels; null where the sheet is one passage.
 */
export function readFamilies(
  planes: LabPlanes,
  around: Surroundings,
  subject: Uint8Array | null,
  wish?: number,
): readonly PassageFamilies[] {
  if (subject && wish === undefined) return readApart(planes, around, subject);
  const cells = binColours(planes, around);
  return [{ cells, places: familyPlaces(chooseFamilies(cells, wish)), where: null }];
}
