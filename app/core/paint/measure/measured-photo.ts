import type { Lab, Point } from '../../colour/lab.ts';

/** Of one colour, though it may be grainy; running from one colour to another; or with a border in it. */
export type Evenness = 'even' | 'slope' | 'two colours';

/** What stands in one frame of the photo. */
export interface FramedColour {
  readonly frame: PatchFrame;
  /** Median of its middle, the light taken out and the bare paper brought to the default paper. */
  readonly lab: Lab;
  readonly evenness: Evenness;
  /** Of a patch across a black line: the part over the line, and the bare line beside it; else the paper. */
  readonly ground: 'paper' | 'line' | 'bare line';
}

/** A photo of painted patches, measured. */
export interface MeasuredPhoto {
  /** In reading order. */
  readonly patches: readonly FramedColour[];
  /** Places where bare paper was seen. */
  readonly paper: readonly Point[];
}

/**
 * A frame round one painted patch, upright: left, top, width, height in shares of the upright
 * photo.
 */
export interface PatchFrame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** No smaller than this in either direction: a frame must stay in sight and hold some pixels. */
const smallest = 0.02;

const within = (low: number, value: number, high: number): number =>
  Math.min(high, Math.max(low, value));

/** The frame moved, kept inside the photo. */
export const movedFrame = (frame: PatchFrame, right: number, down: number): PatchFrame => ({
  ...frame,
  left: within(0, frame.left + right, 1 - frame.width),
  top: within(0, frame.top + down, 1 - frame.height),
});

/** The frame made larger or smaller about its middle, kept inside the photo. */
export function resizedFrame(
  frame: PatchFrame,
  widthTimes: number,
  heightTimes: number,
): PatchFrame {
  const width = within(smallest, frame.width * widthTimes, 1);
  const height = within(smallest, frame.height * heightTimes, 1);
  const about = {
    left: frame.left + (frame.width - width) / 2,
    top: frame.top + (frame.height - height) / 2,
    width,
    height,
  };
  return movedFrame(about, 0, 0);
}

/** The frame with its right lower corner at a place of the photo. */
export function frameTo(frame: PatchFrame, [x, y]: Point): PatchFrame {
  const width = within(smallest, x - frame.left, 1 - frame.left);
  const height = within(smallest, y - frame.top, 1 - frame.top);
  return { ...frame, width, height };
}
