import type { Rgb } from '../../app/model/lab.ts';

/** Painted beside every strip and read back with it: what comes back different was falsified. */
export const knownColours: readonly Rgb[] = [
  [0, 0, 0],
  [255, 255, 255],
  [119, 119, 119],
  [20, 20, 20],
  [235, 235, 235],
  [70, 70, 70],
  [180, 180, 180],
  [255, 0, 0],
  [0, 255, 0],
  [0, 0, 255],
  [201, 93, 41],
  [33, 97, 143],
  [88, 61, 120],
  [146, 170, 52],
  [241, 214, 150],
  [52, 44, 37],
];

export type Trust = 'true' | 'shaky' | 'false';

/** Off by this much the lowest bit was played with: harmless. Own limits, in code values 0..255. */
const harmless = 2;
const bearable = 8;

/**
 * How far the known colours, read back as RGBA bytes, may be trusted: `true` within 2 code values
 * each, `shaky` within 8 on the mean, else `false` (an empty canvas, random or constant pixels).
 */
export function trustIn(readBack: Uint8ClampedArray): Trust {
  let worst = 0;
  let sum = 0;
  knownColours.forEach((colour, cell) => {
    for (let channel = 0; channel < 3; channel++) {
      const off = Math.abs((readBack[cell * 4 + channel] ?? 0) - (colour[channel] as number));
      worst = Math.max(worst, off);
      sum += off;
    }
  });
  if (worst <= harmless) return 'true';
  return sum / (knownColours.length * 3) <= bearable ? 'shaky' : 'false';
}
