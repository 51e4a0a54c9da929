import type { Lab, Point } from '../colour/lab.ts';
import type { Side } from '../raster/size.ts';

/** How lightness slopes over the pixels of a slot: the plane fitted to it. */
export interface SlotSlope {
  /** Difference from its lightest to its darkest end along the plane, L*, over 0. */
  readonly lightness: number;
  /** Where it is darkest. */
  readonly towards: Side;
  /** Share of the lightness's variance the plane explains, 0..1. */
  readonly fit: number;
}

/**
 * All shapes of one band and one family in one passage: what one mix of one wash covers.
 * The slot map holds, for every pixel of the raster, the index of its slot in `Reading.slots`.
 */
export interface Slot {
  readonly passage: string;
  readonly band: number;
  readonly family: number;
  /** Share of the cropped area after merging, 0..1. */
  readonly share: number;
  /** Mean simplified colour of its pixels before merging. */
  readonly lab: Lab;
  /** Mean colour of its most colourful tenth; missing where it has no paint to speak of, and in older readings. */
  readonly vivid?: Lab;
  /** The colour it is to have on the sheet: mapped lightness, a* and b* unchanged. */
  readonly target: Lab;
  /** Paper kept white: target close to the paper, and near neutral. */
  readonly reserve: boolean;
  /** A reserve by her brush, whatever its value in the photo. */
  readonly byHand?: boolean;
  /** Number of connected shapes; how many of them have a short side under 3 mm; area of the largest, mm2. */
  readonly shapes: number;
  readonly smallShapes: number;
  readonly largestMm2: number;
  /** Mean place of its pixels, 0..1 from the left and from the top; missing in older readings. */
  readonly centre?: Point;
  /** Missing where there is none, and in older readings. */
  readonly slope?: SlotSlope;
}

export interface ReserveSummary {
  /** Share of the cropped area kept white, 0..1. */
  readonly share: number;
  readonly count: number;
  readonly smallCount: number;
}
