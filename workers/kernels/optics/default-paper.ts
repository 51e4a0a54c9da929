import type { Lab } from '../../../app/model/lab.ts';
import optics from './data/pigment-optics.json';
import { labOfReflectance } from './lab-of-reflectance.ts';
import { surfaceFloor } from './surface.ts';

/**
 * White paper, 36 bands, without the surface floor: the table gives paper as it is measured, floor
 * included, and its predicted ladders hold only with the floor taken out again. Assumed paper (see
 * paperNote of the optics table).
 */
export const defaultPaper: Float64Array = Float64Array.from(
  optics.paper_R,
  (measured) => (measured - surfaceFloor.dry) / (1 - surfaceFloor.dry),
);

/** What that paper looks like, dry. */
export const defaultPaperLab: Lab = labOfReflectance(defaultPaper);
