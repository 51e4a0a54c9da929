import { cieCurve } from './cie-curve.ts';
import { blueShare, greenShare, redShare } from './lightness.ts';
import { linearOfCode } from './srgb.ts';

/** Luminance is cut into this many steps, each read as its middle: at most 0.014 L* off, in the blacks. */
const steps = 32768;
/** Parts of a step that are counted, so that three rounded shares stay within a thousandth of one. */
const parts = 4096;

const lightnesses = Float32Array.from(
  { length: steps + 1 },
  (_, i) => 116 * cieCurve(Math.min(1, (i + 0.5) / steps)) - 16,
);
// The ends are exact: pure black and white are common, and told apart from what is near them.
lightnesses[0] = 0;
lightnesses[steps] = 100;

/** What each code of a channel adds to the luminance, in parts of a step; whole numbers below 2^27. */
const added = (share: number): Int32Array =>
  Int32Array.from(linearOfCode, (linear) => Math.round(share * steps * parts * linear));
const reds = added(redShare);
const greens = added(greenShare);
const blues = added(blueShare);

const isLittleEndian = new Uint8Array(Uint32Array.of(1).buffer)[0] === 1;
const redShift = isLittleEndian ? 0 : 24;
const greenShift = isLittleEndian ? 8 : 16;
const blueShift = isLittleEndian ? 16 : 8;

/**
 * L* (CIE 15) of every pixel of sRGB bytes, RGBA, opaque, into `plane` (one number a pixel), within
 * 0.015. For a picture seen in its own pixels; one that is reduced is averaged in linear light first.
 */
export function lightnessOfRgba(rgba: Uint8Array | Uint8ClampedArray, plane: Float32Array): void {
  if (rgba.length !== 4 * plane.length) throw new RangeError('Four bytes make one pixel');
  const bytes = rgba.byteOffset % 4 === 0 ? rgba : rgba.slice();
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, plane.length);
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as number;
    const luminance =
      (reds[(word >>> redShift) & 255] as number) +
      (greens[(word >>> greenShift) & 255] as number) +
      (blues[(word >>> blueShift) & 255] as number);
    plane[i] = lightnesses[luminance >> 12] as number;
  }
}
