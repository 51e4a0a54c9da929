import { colourDifference } from '../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../app/core/colour/lab.ts';
import { linearOfCode } from '../../../app/core/colour/srgb.ts';
import { runToEnd } from '../../../app/core/numeric/run-to-end.ts';
import { gaussianBlur } from '../../../app/core/raster/gaussian-blur.ts';
import { emptyRaster, type LabPlanes, labInPlace } from '../../../app/core/raster/linear-raster.ts';
import type { PixelSize } from '../../../app/core/raster/size.ts';
import { seededRandom } from '../../bench/seeded-random.ts';

/** How near one picture of the sheet comes to another, seen at arm's length. */
export interface PictureDistance {
  /** Mean CIEDE2000, and mean |dL*|. */
  readonly colour: number;
  readonly lightness: number;
  /** Mean C* more (less where negative) where the photo is most colourful, its tenth. */
  readonly colourful: number;
  /** 2nd and 98th percentile of L*. */
  readonly darkest: number;
  readonly lightest: number;
  /** Detail of L* between 1 and 4 mm: correlation, and strength (slope of the sheet's on the photo's). */
  readonly correlation: number;
  readonly strength: number;
  /** Structural similarity of L*, at 2 px a mm of the sheet. */
  readonly similarity: number;
}

/** sRGB bytes, 4 a pixel, as L*, a*, b* planes, blurred in linear light with that sigma, px. */
export function seenPlanes(rgba: Uint8ClampedArray, size: PixelSize, sigmaPx: number): LabPlanes {
  const raster = emptyRaster(size.width, size.height);
  for (let i = 0; i < raster.red.length; i++) {
    raster.red[i] = linearOfCode[rgba[4 * i] as number] as number;
    raster.green[i] = linearOfCode[rgba[4 * i + 1] as number] as number;
    raster.blue[i] = linearOfCode[rgba[4 * i + 2] as number] as number;
  }
  runToEnd(gaussianBlur([raster.red, raster.green, raster.blue], size, sigmaPx));
  return labInPlace(raster);
}

const labAt = ({ lightness, a, b }: LabPlanes, i: number): Lab => [
  lightness[i] as number,
  a[i] as number,
  b[i] as number,
];

const quantile = (plane: Float32Array, share: number): number => {
  const sorted = Float32Array.from(plane).sort();
  return sorted[Math.floor(share * (sorted.length - 1))] as number;
};

function blurred(plane: Float32Array, size: PixelSize, sigmaPx: number): Float32Array {
  const copy = Float32Array.from(plane);
  runToEnd(gaussianBlur([copy], size, sigmaPx));
  return copy;
}

/** What of L* changes over 1 to 4 mm. */
function detailOf(plane: Float32Array, size: PixelSize, pxPerMm: number): Float32Array {
  const fine = blurred(plane, size, pxPerMm);
  const coarse = blurred(plane, size, 4 * pxPerMm);
  return fine.map((value, i) => value - (coarse[i] as number));
}

/** Structure is compared at so many px a mm of the sheet, or as fine as the picture is. */
const structurePxPerMm = 2;

/** A plane as means over squares, `pxPerMm` brought down to that of structure. */
function reducedPlane(plane: Float32Array, { width, height }: PixelSize, pxPerMm: number) {
  const times = Math.max(1, pxPerMm / structurePxPerMm);
  const size = { width: Math.floor(width / times), height: Math.floor(height / times) };
  const reduced = new Float32Array(size.width * size.height);
  for (let y = 0, i = 0; y < size.height; y++) {
    for (let x = 0; x < size.width; x++, i++) {
      const [left, top] = [Math.floor(x * times), Math.floor(y * times)];
      const [right, bottom] = [Math.floor((x + 1) * times), Math.floor((y + 1) * times)];
      let sum = 0;
      for (let v = top; v < bottom; v++)
        for (let u = left; u < right; u++) sum += plane[v * width + u] as number;
      reduced[i] = sum / ((right - left) * (bottom - top));
    }
  }
  return { size, reduced };
}

/**
 * Mean structural similarity, Gaussian window of 1.5 px, range 100. Wang, Z., Bovik, A. C., Sheikh, H. R. and
 * Simoncelli, E. P. (2004), Image quality assessment, IEEE Trans. Image Processing 13, 600-612.
 */
function structuralSimilarity(one: Float32Array, two: Float32Array, size: PixelSize): number {
  const mean = (plane: Float32Array): Float32Array => blurred(plane, size, 1.5);
  const times = (x: Float32Array, y: Float32Array): Float32Array =>
    x.map((value, i) => value * (y[i] as number));
  const [c1, c2] = [1, 9];
  const [m1, m2] = [mean(one), mean(two)];
  const [s11, s22, s12] = [mean(times(one, one)), mean(times(two, two)), mean(times(one, two))];
  let sum = 0;
  for (let i = 0; i < one.length; i++) {
    const [a, b] = [m1[i] as number, m2[i] as number];
    const [va, vb] = [(s11[i] as number) - a * a, (s22[i] as number) - b * b];
    const both = (s12[i] as number) - a * b;
    sum += ((2 * a * b + c1) * (2 * both + c2)) / ((a * a + b * b + c1) * (va + vb + c2));
  }
  return sum / one.length;
}

function similarityOnSheet(
  one: Float32Array,
  two: Float32Array,
  size: PixelSize,
  pxPerMm: number,
): number {
  const [a, b] = [reducedPlane(one, size, pxPerMm), reducedPlane(two, size, pxPerMm)];
  return structuralSimilarity(a.reduced, b.reduced, a.size);
}

/** Where only some pixels count, `where` is 1 there. */
export function pictureDistance(
  photo: LabPlanes,
  sheet: LabPlanes,
  size: PixelSize,
  pxPerMm: number,
  where?: Uint8Array,
): PictureDistance {
  const counts = (i: number): boolean => !where || where[i] === 1;
  const chroma = (planes: LabPlanes, i: number): number =>
    Math.hypot(planes.a[i] as number, planes.b[i] as number);
  const own = Float32Array.from(photo.lightness, (_, i) => chroma(photo, i));
  const colourfulFrom = quantile(own, 0.9);
  const details = [photo, sheet].map(({ lightness }) => detailOf(lightness, size, pxPerMm));
  const [wanted, found] = details as [Float32Array, Float32Array];
  let [n, colour, lightness, tenth, gained] = [0, 0, 0, 0, 0];
  let [ww, ff, wf] = [0, 0, 0];
  for (let i = 0; i < own.length; i++) {
    if (!counts(i)) continue;
    n += 1;
    colour += colourDifference(labAt(photo, i), labAt(sheet, i));
    lightness += Math.abs((photo.lightness[i] as number) - (sheet.lightness[i] as number));
    if ((own[i] as number) >= colourfulFrom) {
      tenth += 1;
      gained += chroma(sheet, i) - (own[i] as number);
    }
    const [w, f] = [wanted[i] as number, found[i] as number];
    ww += w * w;
    ff += f * f;
    wf += w * f;
  }
  return {
    colour: colour / n,
    lightness: lightness / n,
    colourful: gained / Math.max(1, tenth),
    darkest: quantile(sheet.lightness, 0.02),
    lightest: quantile(sheet.lightness, 0.98),
    correlation: wf / Math.sqrt(ww * ff || 1),
    strength: wf / (ww || 1),
    similarity: similarityOnSheet(photo.lightness, sheet.lightness, size, pxPerMm),
  };
}

const posterRounds = 12;

/**
 * The picture in `colours` free colours: k-means in L*, a*, b* (Lloyd 1982), begun far apart (Arthur and
 * Vassilvitskii 2007, k-means++, with a seed).
 */
export function freePoster(photo: LabPlanes, colours: number): LabPlanes {
  const count = photo.lightness.length;
  const stride = Math.max(1, Math.floor(count / 40_000));
  const points = Array.from({ length: Math.floor(count / stride) }, (_, n) =>
    labAt(photo, n * stride),
  );
  const random = seededRandom(1);
  const gap = (one: Lab, two: Lab): number =>
    (one[0] - two[0]) ** 2 + (one[1] - two[1]) ** 2 + (one[2] - two[2]) ** 2;
  const nearest = (lab: Lab, centres: readonly Lab[]): number => {
    let best = 0;
    for (let c = 1; c < centres.length; c++) {
      if (gap(lab, centres[c] as Lab) < gap(lab, centres[best] as Lab)) best = c;
    }
    return best;
  };
  let centres: Lab[] = [points[0] as Lab];
  while (centres.length < colours) {
    const far = points.map((lab) => gap(lab, centres[nearest(lab, centres)] as Lab));
    let left = random() * far.reduce((all, each) => all + each, 0);
    const n = far.findIndex((each) => {
      left -= each;
      return left <= 0;
    });
    centres.push(points[Math.max(0, n)] as Lab);
  }
  for (let round = 0; round < posterRounds; round++) {
    const sums = centres.map(() => [0, 0, 0, 0]);
    for (const lab of points) {
      const sum = sums[nearest(lab, centres)] as number[];
      for (let c = 0; c < 3; c++) sum[c] = (sum[c] as number) + (lab[c] as number);
      sum[3] = (sum[3] as number) + 1;
    }
    centres = sums.map(
      ([l = 0, a = 0, b = 0, n = 0], c): Lab =>
        n > 0 ? [l / n, a / n, b / n] : (centres[c] as Lab),
    );
  }
  const out = {
    lightness: new Float32Array(count),
    a: new Float32Array(count),
    b: new Float32Array(count),
  };
  for (let i = 0; i < count; i++) {
    const [l, a, b] = centres[nearest(labAt(photo, i), centres)] as Lab;
    out.lightness[i] = l;
    out.a[i] = a;
    out.b[i] = b;
  }
  return out;
}
