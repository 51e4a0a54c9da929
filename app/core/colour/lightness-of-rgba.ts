import { blueShare, cieCurve, greenShare, redShare } from './luminance.ts';
import { linearOfCode } from './srgb.ts';

/** Luminance is cut into this many steps, each read as its middle: at most 0.014 L* off, in the blacks. */
const steps = 32768;
/** Parts of a step that are counted, so that three rounded shares stay within a thousandth of one. */
const parts = 4096;

function lightnessOfSteps(): Float32Array {
  const lightnesses = Float32Array.from(
    { length: steps + 1 },
    (_, i) => 116 * cieCurve(Math.min(1, (i + 0.5) / steps)) - 16,
  );
  // The ends are exact: pure black and white are common, and told apart from what is near them.
  lightnesses[0] = 0;
  lightnesses[steps] = 100;
  return lightnesses;
}

/** What each code of a channel adds to the luminance, in parts of a step; whole numbers below 2^27. */
const added = (share: number): Int32Array =>
  Int32Array.from(linearOfCode, (linear) => Math.round(share * steps * parts * linear));

type Run = (words: Uint32Array, plane: Float32Array, from: number, to: number) => void;

/**
 * L* of the pixels `from` to before `to`, each a word. Made by a function, as only what is constant inside one
 * is constant to the engine: bundlers turn the constants of a file into variables, and the loop takes twice as long.
 */
function runWithTables(): Run {
  const lightnesses = lightnessOfSteps();
  const reds = added(redShare);
  const greens = added(greenShare);
  const blues = added(blueShare);
  const isLittleEndian = new Uint8Array(Uint32Array.of(1).buffer)[0] === 1;
  const redShift = isLittleEndian ? 0 : 24;
  const greenShift = isLittleEndian ? 8 : 16;
  const blueShift = isLittleEndian ? 16 : 8;

  const lightnessOf = (word: number): number => {
    const luminance =
      reds[(word >>> redShift) & 255] +
      greens[(word >>> greenShift) & 255] +
      blues[(word >>> blueShift) & 255];
    return lightnesses[luminance >> 12];
  };

  // Four a turn: with so little to do for each, the loop's own work would be a quarter of it.
  return (words, plane, from, to) => {
    let i = from;
    for (; i + 3 < to; i += 4) {
      plane[i] = lightnessOf(words[i]);
      plane[i + 1] = lightnessOf(words[i + 1]);
      plane[i + 2] = lightnessOf(words[i + 2]);
      plane[i + 3] = lightnessOf(words[i + 3]);
    }
    for (; i < to; i++) plane[i] = lightnessOf(words[i]);
  };
}

const lightnessOfRun = runWithTables();

/** Pixels at a time: a function called often is compiled well, one long loop called once is not. */
const runLength = 4096;

/**
 * L* (CIE 15) of every pixel of sRGB bytes, RGBA, opaque, into `plane` (one number a pixel), within
 * 0.015. For a picture seen in its own pixels; one that is reduced is averaged in linear light first.
 */
export function lightnessOfRgba(rgba: Uint8Array | Uint8ClampedArray, plane: Float32Array): void {
  if (rgba.length !== 4 * plane.length) throw new RangeError('Four bytes make one pixel');
  const bytes = rgba.byteOffset % 4 === 0 ? rgba : rgba.slice();
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, plane.length);
  for (let from = 0; from < words.length; from += runLength) {
    lightnessOfRun(words, plane, from, Math.min(words.length, from + runLength));
  }
}
