import type { FramedColour } from '../../../app/model/measured-photo.ts';
import type { PatchFrame } from '../../../app/model/patch-frame.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { writePaperLab } from './paper-lab.ts';
import type { PaperLight } from './paper-light.ts';

/** The share of a frame's sides that counts: its rim may be edge, bead or paper. */
const middleShare = 0.5;

const atShare = (values: Float32Array, share: number): number =>
  values.sort()[Math.floor(share * (values.length - 1))] ?? 0;

/** Four fifths of the pixels lie nearer to the middle colour than the spread. */
const spreadShare = 0.8;

/** The colour in the middle of a frame: median of each of L*, a*, b*. */
export function framedColour(
  raster: LinearRaster,
  light: PaperLight,
  frame: PatchFrame,
): FramedColour {
  const { width, height } = raster;
  const rim = (1 - middleShare) / 2;
  const span = (start: number, length: number, pixels: number): [number, number] => {
    const from = Math.min(pixels - 1, Math.floor((start + rim * length) * pixels));
    const to = Math.floor((start + (1 - rim) * length) * pixels);
    return [from, Math.min(pixels, Math.max(from + 1, to))];
  };
  const [left, right] = span(frame.left, frame.width, width);
  const [top, bottom] = span(frame.top, frame.height, height);
  const count = (right - left) * (bottom - top);
  const lab = new Float32Array(3 * count);
  let next = 0;
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      writePaperLab(raster, y * width + x, light, lab, next++, count);
    }
  }
  const plane = (c: number): Float32Array => lab.slice(c * count, (c + 1) * count);
  const [l, a, b] = [atShare(plane(0), 0.5), atShare(plane(1), 0.5), atShare(plane(2), 0.5)];
  const away = new Float32Array(count);
  for (let p = 0; p < count; p++) {
    away[p] = Math.hypot(
      (lab[p] as number) - l,
      (lab[count + p] as number) - a,
      (lab[2 * count + p] as number) - b,
    );
  }
  return { frame, lab: [l, a, b], spread: atShare(away, spreadShare) };
}
