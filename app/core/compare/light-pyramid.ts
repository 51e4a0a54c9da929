import { luminanceOfLinear } from '../colour/lightness.ts';
import type { LinearRaster } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { type Homography, project } from './homography.ts';

/** One plane of how light a picture is, about as the eye has it. */
export interface LightPlane extends PixelSize {
  readonly plane: Float32Array;
}

export const lightPlane = ({ width, height, red, green, blue }: LinearRaster): LightPlane => ({
  width,
  height,
  plane: red.map((r, i) => Math.cbrt(Math.max(0, luminanceOfLinear(r, green[i], blue[i])))),
});

/** Half the size: means of two by two pixels; an odd last row or column is left out. */
function halved({ width, height, plane }: LightPlane): LightPlane {
  const [w, h] = [width >> 1, height >> 1];
  const half = new Float32Array(w * h);
  for (let y = 0, i = 0; y < h; y++)
    for (let x = 0, from = 2 * y * width; x < w; x++, i++, from += 2)
      half[i] = (plane[from] + plane[from + 1] + plane[from + width] + plane[from + width + 1]) / 4;
  return { width: w, height: h, plane: half };
}

/**
 * The photo at its size and at halves of it: whatever is laid over it reads the one that is as fine as itself. Each is
 * made when it is first asked for; sheets are mostly looked at in halves.
 */
export interface LightPyramid {
  readonly most: number;
  /** The photo reduced by 2 ^ level. */
  readonly at: (level: number) => LightPlane;
}

export function lightPyramid(photo: LinearRaster): LightPyramid {
  const levels: LightPlane[] = [];
  const at = (level: number): LightPlane => {
    levels[level] ??=
      level === 0 ? lightPlane(photo) : level === 1 ? halfLight(photo) : halved(at(level - 1));
    return levels[level];
  };
  return { most: 5, at };
}

/** `lightPlane` of the photo at half its size, two by two pixels together. */
function halfLight({ width, height, red, green, blue }: LinearRaster): LightPlane {
  const [w, h] = [width >> 1, height >> 1];
  const plane = new Float32Array(w * h);
  for (let y = 0, i = 0; y < h; y++)
    for (let x = 0, a = 2 * y * width; x < w; x++, i++, a += 2) {
      const c = a + width;
      plane[i] = Math.cbrt(
        Math.max(
          0,
          luminanceOfLinear(
            red[a] + red[a + 1] + red[c] + red[c + 1],
            green[a] + green[a + 1] + green[c] + green[c + 1],
            blue[a] + blue[a + 1] + blue[c] + blue[c + 1],
          ) / 4,
        ),
      );
    }
  return { width: w, height: h, plane };
}

/** What of the photo lies under every pixel of a target, read between four pixels; NaN off the photo. */
export function readPhoto(
  photo: LightPyramid,
  toPhoto: Homography,
  { width, height }: PixelSize,
): Float32Array {
  const [here, right] = [
    project(toPhoto, width / 2, height / 2),
    project(toPhoto, width / 2 + 1, height / 2),
  ];
  const finer = Math.hypot(right[0] - here[0], right[1] - here[1]);
  const level = Math.max(0, Math.min(photo.most, Math.round(Math.log2(finer))));
  const { plane, width: across, height: down } = photo.at(level);
  const scale = 1 / 2 ** level;
  const [h0, h1, h2, h3, h4, h5] = toPhoto.subarray(0, 6).map((value) => value * scale);
  const [h6, h7, h8] = toPhoto.subarray(6);
  const out = new Float32Array(width * height);
  for (let y = 0, i = 0; y < height; y++)
    for (let x = 0; x < width; x++, i++) {
      const u = x + 0.5;
      const v = y + 0.5;
      const w = h6 * u + h7 * v + h8;
      const px = (h0 * u + h1 * v + h2) / w - 0.5;
      const py = (h3 * u + h4 * v + h5) / w - 0.5;
      if (!(px >= -0.5 && py >= -0.5 && px <= across - 0.5 && py <= down - 0.5)) {
        out[i] = Number.NaN;
        continue;
      }
      const left = px <= 0 ? 0 : Math.min(across - 2, px | 0);
      const top = py <= 0 ? 0 : Math.min(down - 2, py | 0);
      const from = top * across + left;
      const a = px - left;
      const b = py - top;
      const above = plane[from] + a * (plane[from + 1] - plane[from]);
      const below = plane[from + across] + a * (plane[from + across + 1] - plane[from + across]);
      out[i] = above + b * (below - above);
    }
  return out;
}
