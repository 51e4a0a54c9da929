import type { Lab, Point } from './lab.ts';
import type { PatchFrame } from './patch-frame.ts';

/** What stands in one frame of the photo. */
export interface FramedColour {
  readonly frame: PatchFrame;
  /** Median of its middle, the light taken out and the bare paper brought to the default paper. */
  readonly lab: Lab;
  /** Lab distance from that within which four fifths of its pixels lie: over 8 is not one colour. */
  readonly spread: number;
}

/** A photo of painted patches, measured. */
export interface MeasuredPhoto {
  /** In reading order. */
  readonly patches: readonly FramedColour[];
  /** Places where bare paper was seen. */
  readonly paper: readonly Point[];
}
