// The same work as ours in opencv-js, each step as its users would write it. Mats made are the caller's.

import type { PhotoBytes } from './bench.ts';
import type { Mat, OpenCv } from './open-cv.ts';

/** sRGB bytes to L*, by its conversion of floats. */
export function openCvLightness(cv: OpenCv, { width, height, rgba }: PhotoBytes): Mat {
  const source = new cv.Mat(height, width, cv.CV_8UC4);
  source.data.set(rgba);
  const [rgb, floats, lab] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
  cv.cvtColor(source, rgb, cv.COLOR_RGBA2RGB);
  rgb.convertTo(floats, cv.CV_32F, 1 / 255);
  cv.cvtColor(floats, lab, cv.COLOR_RGB2Lab);
  const planes = new cv.MatVector();
  cv.split(lab, planes);
  const lightness = planes.get(0);
  for (const mat of [source, rgb, floats, lab]) mat.delete();
  for (const i of [1, 2]) planes.get(i).delete();
  planes.delete();
  return lightness;
}

/**
 * Groups values into k: at most ten rounds until centres move less than 1 L*, the best of three
 * starts. Answers the rank of every pixel's centre from dark to light, 0.., and the centres.
 */
export function openCvBands(cv: OpenCv, lightness: Mat, k: number) {
  const { rows, cols } = lightness;
  const samples = new cv.Mat(rows * cols, 1, cv.CV_32F);
  samples.data32F.set(lightness.data32F);
  const [labels, centres] = [new cv.Mat(), new cv.Mat()];
  const criteria = new cv.TermCriteria(cv.TermCriteria_EPS + cv.TermCriteria_MAX_ITER, 10, 1);
  const cost = cv.kmeans(samples, k, labels, criteria, 3, cv.KMEANS_PP_CENTERS, centres);
  const order = [...centres.data32F.keys()].sort(
    (a, b) => (centres.data32F[a] as number) - (centres.data32F[b] as number),
  );
  const rank = Uint8Array.from(order.keys(), (n) => order.indexOf(n));
  const bands = new cv.Mat(rows, cols, cv.CV_8U);
  const [from, to] = [labels.data32S, bands.data];
  for (let i = 0; i < to.length; i++) to[i] = rank[from[i] as number] as number;
  for (const mat of [samples, labels, centres]) mat.delete();
  return { bands, cost };
}

const areaColumn = 4;
const statColumns = 5;

/** Connected components band by band, numbered through, and the band and area of each. */
function components(cv: OpenCv, bands: Mat, k: number) {
  const { rows, cols } = bands;
  const labels = new Int32Array(rows * cols);
  const areas: number[] = [];
  const kinds: number[] = [];
  for (let band = 0; band < k; band++) {
    const level = new cv.Mat(rows, cols, cv.CV_8U, [band, 0, 0, 0]);
    const [mask, own, stats, centroids] = [new cv.Mat(), new cv.Mat(), new cv.Mat(), new cv.Mat()];
    cv.inRange(bands, level, level, mask);
    const count = cv.connectedComponentsWithStats(mask, own, stats, centroids, 4, cv.CV_32S);
    const before = areas.length - 1; // label 0 is what lies outside the mask
    for (let n = 1; n < count; n++) {
      areas.push(stats.data32S[n * statColumns + areaColumn] as number);
      kinds.push(band);
    }
    const from = own.data32S;
    for (let i = 0; i < labels.length; i++) {
      const label = from[i] as number;
      if (label > 0) labels[i] = before + label;
    }
    for (const mat of [level, mask, own, stats, centroids]) mat.delete();
  }
  return { labels, areas, kinds };
}

/**
 * Shapes under `leastPx` join the neighbour nearest in value, of several the largest; again until
 * none is left (at most eight times), since what is merged may still be small. Changes the bands.
 */
export function openCvMasses(cv: OpenCv, bands: Mat, k: number, leastPx: number): void {
  const { cols } = bands;
  for (let round = 0; round < 8; round++) {
    const { labels, areas, kinds } = components(cv, bands, k);
    const into = new Int32Array(areas.length).fill(-1);
    const differs = (small: number, other: number): void => {
      if ((areas[small] as number) >= leastPx) return;
      const best = into[small] as number;
      const apart = (one: number): number =>
        Math.abs((kinds[one] as number) - (kinds[small] as number));
      const isNearer =
        best === -1 ||
        apart(other) < apart(best) ||
        (apart(other) === apart(best) && (areas[other] as number) > (areas[best] as number));
      if (isNearer) into[small] = other;
    };
    for (let i = 1; i < labels.length; i++) {
      const own = labels[i] as number;
      const left = labels[i - 1] as number;
      if (i % cols > 0 && left !== own) {
        differs(own, left);
        differs(left, own);
      }
      const above = i >= cols ? (labels[i - cols] as number) : own;
      if (above !== own) {
        differs(own, above);
        differs(above, own);
      }
    }
    let changed = 0;
    const to = bands.data;
    for (let i = 0; i < labels.length; i++) {
      const target = into[labels[i] as number] as number;
      if (target === -1) continue;
      to[i] = kinds[target] as number;
      changed++;
    }
    if (changed === 0) return;
  }
}

/** Size of the gradient by its 3 x 3 derivative. */
export function openCvGradient(cv: OpenCv, lightness: Mat): Mat {
  const [x, y, sizes] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
  cv.Sobel(lightness, x, cv.CV_32F, 1, 0, 3);
  cv.Sobel(lightness, y, cv.CV_32F, 0, 1, 3);
  cv.magnitude(x, y, sizes);
  x.delete();
  y.delete();
  return sizes;
}
