import { defaultPaperLab } from '../optics/default-paper.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import type { PaperLight } from './paper-light.ts';
import { xyzOfLab } from './xyz-of-lab.ts';

// Linear sRGB to XYZ as shares of the white's, so that each row sums to 1: IEC 61966-2-1, D65.
const toXyz = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
].map((row) => {
  const sum = row.reduce((all, each) => all + each, 0);
  return row.map((each) => each / sum);
});

const paperXyz = xyzOfLab(defaultPaperLab);
const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);

/** Linear red, green, blue of bare paper at a place (x, y 0..1 of the photo), into `out`. */
function writePaperAt({ planes }: PaperLight, x: number, y: number, out: Float64Array): void {
  for (let c = 0; c < 3; c++) {
    const plane = planes[c] as readonly [number, number, number];
    out[c] = Math.exp(plane[0] + plane[1] * (x - 0.5) + plane[2] * (y - 0.5));
  }
}

const paper = new Float64Array(3);
const fs = new Float64Array(3);

/**
 * Lab (D65, 2 degree) of pixel `from` of a raster, to lab[at], lab[at + step], lab[at + 2 step], with the
 * light on the sheet taken out channel by channel (von Kries, in linear light) and bare paper brought to
 * the default paper.
 */
export function writePaperLab(
  { width, height, red, green, blue }: LinearRaster,
  from: number,
  light: PaperLight,
  lab: Float32Array,
  at: number,
  step: number,
): void {
  const x = ((from % width) + 0.5) / width;
  const y = (Math.floor(from / width) + 0.5) / height;
  writePaperAt(light, x, y, paper);
  const r = (red[from] as number) / (paper[0] as number);
  const g = (green[from] as number) / (paper[1] as number);
  const b = (blue[from] as number) / (paper[2] as number);
  for (let i = 0; i < 3; i++) {
    const row = toXyz[i] as readonly number[];
    const share = (row[0] as number) * r + (row[1] as number) * g + (row[2] as number) * b;
    fs[i] = f((paperXyz[i] as number) * share);
  }
  lab[at] = 116 * (fs[1] as number) - 16;
  lab[at + step] = 500 * ((fs[0] as number) - (fs[1] as number));
  lab[at + 2 * step] = 200 * ((fs[1] as number) - (fs[2] as number));
}

/** Lab of every pixel as `writePaperLab` has it, three planes one after the other. */
export function paperLab(raster: LinearRaster, light: PaperLight): Float32Array {
  const count = raster.width * raster.height;
  const lab = new Float32Array(3 * count);
  for (let p = 0; p < count; p++) writePaperLab(raster, p, light, lab, p, count);
  return lab;
}
