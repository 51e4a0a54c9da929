import { type Lab, labOfLinear } from '../../../app/core/colour/lab.ts';
import type { LinearRaster } from '../../../app/core/raster/linear-raster.ts';

/** The eight full colours of `p3-out-of-gamut.png`: their codes in Display P3. */
export const fullCodes = [
  [255, 0, 0],
  [0, 255, 0],
  [0, 0, 255],
  [255, 255, 0],
  [255, 0, 255],
  [0, 255, 255],
  [255, 255, 255],
  [0, 0, 0],
] as const;

/** Their Lab (D65), as culori has it. */
const fullColours: readonly Lab[] = [
  [54.967, 94.093, 94.77],
  [86.59, -115.28, 107.678],
  [33.834, 81.709, -111.279],
  [96.849, -23.921, 125.367],
  [62.361, 110.48, -62.095],
  [90.369, -64.819, -16.606],
  [100, 0, 0],
  [0, 0, 0],
];

/** The sRGB codes that the tagged patches were made of. */
export const taggedCodes = [
  [245, 245, 245],
  [119, 119, 119],
  [20, 20, 20],
  [200, 60, 40],
  [60, 150, 70],
  [50, 80, 170],
  [230, 200, 60],
  [150, 60, 130],
] as const;

/** Their Lab (D65), as culori has it. */
const taggedColours: readonly Lab[] = [
  [96.537, 0, 0],
  [50.034, 0, 0],
  [6.319, 0, 0],
  [46.534, 54.274, 43.204],
  [55.293, -44.027, 34.082],
  [36.588, 20.188, -51.632],
  [80.993, -3.698, 69.494],
  [40.128, 46.378, -21.192],
];

/** The wide cases and the true Lab of their patches, four to a row. */
export const widePatches: readonly (readonly [file: string, truth: readonly Lab[]])[] = [
  ['p3-out-of-gamut.png', fullColours],
  ['patches-p3-tagged.png', taggedColours],
  ['patches-p3-tagged.jpg', taggedColours],
];

/** Mean Lab of the middle of each of the eight patches, in reading order. */
export function patchColours({ width, height, red, green, blue }: LinearRaster): Lab[] {
  const side = width / 4;
  return Array.from({ length: 8 }, (_, patch) => {
    const left = Math.round(((patch % 4) + 0.25) * side);
    const top = Math.round((Math.floor(patch / 4) + 0.25) * (height / 2));
    let [r, g, b, count] = [0, 0, 0, 0];
    for (let y = top; y < top + side / 2; y++) {
      for (let i = y * width + left; i < y * width + left + side / 2; i++, count++) {
        r += red[i] as number;
        g += green[i] as number;
        b += blue[i] as number;
      }
    }
    return labOfLinear(r / count, g / count, b / count);
  });
}
