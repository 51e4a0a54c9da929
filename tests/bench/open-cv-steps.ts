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
  planes.delete();
  return lightness;
}

/** The grain blurred away, then smoothed up to its edges; `blurPx` is a sigma. */
export function openCvSmoothing(cv: OpenCv, lightness: Mat, blurPx: number): Mat {
  const [blurred, smooth] = [new cv.Mat(), new cv.Mat()];
  cv.GaussianBlur(lightness, blurred, new cv.Size(0, 0), blurPx, blurPx, cv.BORDER_DEFAULT);
  cv.bilateralFilter(blurred, smooth, 9, 30, 7, cv.BORDER_DEFAULT);
  blurred.delete();
  return smooth;
}

/** From other starts k-means may end in other bands, up to a tenth dearer, in the same time. */
const goodStart = 4;

/**
 * Groups values into k: at most ten rounds until centres move less than 1 L*, the best of three
 * starts, the same at every call. Answers the rank of every pixel's centre, 0 the lightest, and the
 * sum of squared distances to the centres.
 */
export function openCvBands(cv: OpenCv, lightness: Mat, k: number) {
  const { rows, cols } = lightness;
  const samples = new cv.Mat(rows * cols, 1, cv.CV_32F);
  samples.data32F.set(lightness.data32F);
  const [labels, centres] = [new cv.Mat(), new cv.Mat()];
  const criteria = new cv.TermCriteria(cv.TermCriteria_EPS + cv.TermCriteria_MAX_ITER, 10, 1);
  cv.setRNGSeed(goodStart);
  const cost = cv.kmeans(samples, k, labels, criteria, 3, cv.KMEANS_PP_CENTERS, centres);
  const order = [...centres.data32F.keys()].sort(
    (a, b) => (centres.data32F[b] as number) - (centres.data32F[a] as number),
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

/** The pixels of bands `from` to `to`, white on black. */
function maskOf(cv: OpenCv, bands: Mat, from: number, to: number): Mat {
  const [low, high] = [from, to].map(
    (band) => new cv.Mat(bands.rows, bands.cols, cv.CV_8U, [band, 0, 0, 0]),
  ) as [Mat, Mat];
  const mask = new cv.Mat();
  cv.inRange(bands, low, high, mask);
  low.delete();
  high.delete();
  return mask;
}

/** Connected components band by band, numbered through, and the band and area of each. */
function components(cv: OpenCv, bands: Mat, k: number) {
  const { rows, cols } = bands;
  const labels = new Int32Array(rows * cols);
  const areas: number[] = [];
  const kinds: number[] = [];
  for (let band = 0; band < k; band++) {
    const mask = maskOf(cv, bands, band, band);
    const [own, stats, centroids] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
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
    for (const mat of [mask, own, stats, centroids]) mat.delete();
  }
  return { labels, areas, kinds };
}

/**
 * Shapes of band n under `leastPx[n]` join the neighbour nearest in value, of several the largest; again
 * until none is left (at most eight times), since what is merged may still be small. Changes the bands.
 */
export function openCvMasses(cv: OpenCv, bands: Mat, leastPx: readonly number[]): void {
  const { cols } = bands;
  for (let round = 0; round < 8; round++) {
    const { labels, areas, kinds } = components(cv, bands, leastPx.length);
    const into = new Int32Array(areas.length).fill(-1);
    const differs = (small: number, other: number): void => {
      const area = areas[small] as number;
      if (area >= (leastPx[kinds[small] as number] as number)) return;
      // Never into a smaller one: two small neighbours would change places in every round.
      const larger = (areas[other] as number) - area;
      if (larger < 0 || (larger === 0 && small < other)) return;
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
function gradientOf(cv: OpenCv, lightness: Mat): Mat {
  const [x, y, sizes] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
  cv.Sobel(lightness, x, cv.CV_32F, 1, 0, 3);
  cv.Sobel(lightness, y, cv.CV_32F, 0, 1, 3);
  cv.magnitude(x, y, sizes);
  x.delete();
  y.delete();
  return sizes;
}

/** Blur that a gradient is compared with its own after: sigma, px. */
const blurAgainPx = 1;

/**
 * The contours between k bands with contrast and softness along them: whole length, px (one between bands n
 * apart counts n times; the picture's own border does not), mean gradient, and the share of the length
 * where an edge is blurred by more than `softPx`, a sigma. What a blur of 1 px leaves of the gradient tells
 * how much was blurred before (Zhuo, Sim, 'Defocus map estimation from a single image', 2011).
 */
export function openCvEdges(
  cv: OpenCv,
  bands: Mat,
  lightness: Mat,
  k: number,
  softPx: number,
): { lengthPx: number; gradient: number; soft: number } {
  const { rows, cols } = bands;
  const blurred = new cv.Mat();
  const size = new cv.Size(0, 0);
  cv.GaussianBlur(lightness, blurred, size, blurAgainPx, blurAgainPx, cv.BORDER_DEFAULT);
  const [before, after] = [gradientOf(cv, lightness), gradientOf(cv, blurred)];
  const [sizes, left] = [before.data32F, after.data32F];
  const softRatio = Math.hypot(1, blurAgainPx / softPx);
  const onBorder = (x: number, y: number): boolean =>
    x === 0 || y === 0 || x === cols - 1 || y === rows - 1;
  let lengthPx = 0;
  let softLengthPx = 0;
  let sum = 0;
  for (let band = 1; band < k; band++) {
    const mask = maskOf(cv, bands, band, k);
    const [contours, hierarchy] = [new cv.MatVector(), new cv.Mat()];
    cv.findContours(mask, contours, hierarchy, cv.RETR_LIST, cv.CHAIN_APPROX_NONE);
    for (let n = 0; n < contours.size(); n++) {
      const line = contours.get(n);
      const places = line.data32S;
      let beforeX = places[places.length - 2] as number;
      let beforeY = places[places.length - 1] as number;
      for (let i = 0; i < places.length; i += 2) {
        const x = places[i] as number;
        const y = places[i + 1] as number;
        const step = x !== beforeX && y !== beforeY ? Math.SQRT2 : 1;
        if (!(onBorder(x, y) && onBorder(beforeX, beforeY))) {
          const own = sizes[y * cols + x] as number;
          lengthPx += step;
          sum += step * own;
          if (own < softRatio * (left[y * cols + x] as number)) softLengthPx += step;
        }
        beforeX = x;
        beforeY = y;
      }
      line.delete();
    }
    mask.delete();
    contours.delete();
    hierarchy.delete();
  }
  for (const mat of [blurred, before, after]) mat.delete();
  if (lengthPx === 0) return { lengthPx, gradient: 0, soft: 0 };
  return { lengthPx, gradient: sum / lengthPx, soft: softLengthPx / lengthPx };
}
