import { emptyRaster, type LinearRaster } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { type Homography, project } from './homography.ts';

/** So many readings each way stand for a pixel, at most: enough for a photo four times as fine. */
const mostReadings = 4;

/** How many px of the photo a px of the sheet takes each way, in the middle of the picture. */
function reducedBy(h: Homography, { width, height }: PixelSize): number {
  const [x, y] = [width / 2, height / 2];
  const [here, right, below] = [project(h, x, y), project(h, x + 1, y), project(h, x, y + 1)];
  return Math.max(
    Math.hypot(right[0] - here[0], right[1] - here[1]),
    Math.hypot(below[0] - here[0], below[1] - here[1]),
  );
}

/**
 * The photo as it would look from straight above: `toPhoto` takes px of the new picture to px of the photo. Every
 * pixel is the mean of readings spread evenly over what of the photo lies under it, each interpolated between four
 * pixels, in linear light. Places off the photo are NaN in all planes.
 */
export function squareUp(photo: LinearRaster, toPhoto: Homography, size: PixelSize): LinearRaster {
  const { width, height } = size;
  const out = emptyRaster(width, height);
  const across = photo.width;
  const [lastX, lastY] = [photo.width - 1, photo.height - 1];
  const times = Math.min(mostReadings, Math.max(1, Math.ceil(reducedBy(toPhoto, size))));
  const share = 1 / (times * times);
  const [h0, h1, h2, h3, h4, h5, h6, h7, h8] = toPhoto;
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      let red = 0;
      let green = 0;
      let blue = 0;
      for (let n = 0; n < times * times; n++) {
        const sx = x + ((n % times) + 0.5) / times;
        const sy = y + (((n / times) | 0) + 0.5) / times;
        const w = h6 * sx + h7 * sy + h8;
        const px = (h0 * sx + h1 * sy + h2) / w - 0.5;
        const py = (h3 * sx + h4 * sy + h5) / w - 0.5;
        if (!(px >= -0.5 && py >= -0.5 && px <= lastX + 0.5 && py <= lastY + 0.5)) {
          red = Number.NaN;
          break;
        }
        const u = Math.min(lastX, Math.max(0, px));
        const v = Math.min(lastY, Math.max(0, py));
        const left = Math.min(lastX - 1, u | 0);
        const top = Math.min(lastY - 1, v | 0);
        const at = top * across + left;
        const below = at + across;
        const right = u - left;
        const low = v - top;
        const a = (1 - right) * (1 - low);
        const b = right * (1 - low);
        const c = (1 - right) * low;
        const d = right * low;
        red +=
          a * photo.red[at] +
          b * photo.red[at + 1] +
          c * photo.red[below] +
          d * photo.red[below + 1];
        green +=
          a * photo.green[at] +
          b * photo.green[at + 1] +
          c * photo.green[below] +
          d * photo.green[below + 1];
        blue +=
          a * photo.blue[at] +
          b * photo.blue[at + 1] +
          c * photo.blue[below] +
          d * photo.blue[below + 1];
      }
      const missing = Number.isNaN(red);
      out.red[i] = missing ? Number.NaN : red * share;
      out.green[i] = missing ? Number.NaN : green * share;
      out.blue[i] = missing ? Number.NaN : blue * share;
    }
  }
  return out;
}
