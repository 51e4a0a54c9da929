import type { Point } from '../../colour/lab.ts';
import { chamferDistances } from '../../raster/distance-map.ts';
import { gaussianBlur } from '../../raster/gaussian-blur.ts';
import { labelRuns, maskOfShape } from '../../raster/label-shapes.ts';
import { type LabPlanes, type LinearRaster, lightnessPlane } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';
import { thinStroke } from '../../reference/photo-stroke.ts';
import { cellMeans } from '../families/surroundings.ts';
import { convexHull, joinLoops } from './loops.ts';
import type { SubjectStroke } from './subject.ts';
import { wholeThing } from './whole-thing.ts';

// What stands out is looked for on a grid of 1 mm: by contrast between 1 and 4 mm, the finest of it counted double (so
// that what is sharp leads), by distance of the colour to its surroundings, and by place. All figures: own, set on the
// eight photographs of the tests.
const cellMm = 1;
/** A loose circle needs no finer grid than so many of its cells. */
const coarserCells = 3;
const [fineMm, coarseMm] = [1, 4] as const;
/** Contrast and colour are seen over so much of the sheet, mm. */
const [contrastMm, colourMm] = [6, 8] as const;
const surroundMm = 40;
/** L* counts less than a* and b* in the distance to the surroundings. */
const lightnessShare = 0.7;
/** Share of contrast beside that of colour. */
const contrastShare = 1.2;
/** No more than so many times what a tenth of the sheet has: one glint is no subject. */
const mostTimes = 1.5;
/** Fall of the weight from the middle of the sheet, and from where attention gathers: exp(-r^2 / this), r in its sides. */
const [sheetFall, gatherFall] = [0.35, 0.12] as const;
const shifts = 6;
/** The subject is at most this share of the sheet ... */
const mostShare = 0.14;
/** ... in one piece, or two where the second is at least this share of the first. */
const secondPiece = 0.35;
/** What draws the eye less than this share of the most is no part of it. */
const leastOfMost = 0.25;
/** Nothing stands out where the eye is drawn less than so many times as much as by the rest of the sheet, ... */
const standsOutTimes = 1.5;
/** ... or where, against what lies so far round it, mm, ... */
const ringMm = 30;
/** ... the colour (CIE L*a*b*, L* at its share) differs by less than this: a horizon goes on to either side; ... */
const leastApart = 3;
/** ... or by less than this, and the contrast is not so many times as strong. */
const plainlyApart = 7;
const sharperTimes = 1.5;

/** What of the picture draws the eye, by cell, wherever it lies; and what it is made of. */
interface Attention {
  readonly grid: PixelSize;
  readonly cellsPerMm: number;
  readonly drawn: Float32Array;
  /** Contrast between 1 and 4 mm, L*; and the cells' own L*, a*, b*. */
  readonly contrast: Float32Array;
  readonly colours: readonly Float32Array[];
}

/** The value that a share of the list lies under. */
function quantile(values: Float32Array, share: number): number {
  const sorted = Float32Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

/** Contrast of every cell, the finest of it counted double. */
function contrastOf(own: Float32Array, fine: Float32Array, coarse: Float32Array): Float32Array {
  const contrast = new Float32Array(own.length);
  for (let i = 0; i < own.length; i++) {
    contrast[i] = 2 * Math.abs(own[i] - fine[i]) + Math.abs(fine[i] - coarse[i]);
  }
  return contrast;
}

/** How far the colour of every cell is from that of its surroundings. */
function distancesOf(
  [l, a, b]: readonly Float32Array[],
  [aroundL, aroundA, aroundB]: readonly Float32Array[],
): Float32Array {
  const distances = new Float32Array(l.length);
  for (let i = 0; i < l.length; i++) {
    const dl = lightnessShare * (l[i] - aroundL[i]);
    const da = a[i] - aroundA[i];
    const db = b[i] - aroundB[i];
    distances[i] = Math.sqrt(dl * dl + da * da + db * db);
  }
  return distances;
}

function* attention(
  { a, b }: LabPlanes,
  raster: LinearRaster,
  pxPerMm: number,
): Generator<void, Attention> {
  const cellPx = Math.max(1, Math.round(cellMm * pxPerMm));
  const cellsPerMm = pxPerMm / cellPx;
  const { red, green, blue } = raster;
  const found = yield* cellMeans([red, green, blue, a, b], raster, cellPx);
  const { grid } = found;
  const [r, g, u, ...hues] = found.means;
  const means = [lightnessPlane({ ...grid, red: r, green: g, blue: u }), ...hues];
  const blurred = function* (plane: Float32Array, mm: number): Generator<void, Float32Array> {
    const copy = plane.slice();
    yield* gaussianBlur([copy], grid, mm * cellsPerMm);
    return copy;
  };
  const fine = yield* blurred(means[0], fineMm);
  const coarse = yield* blurred(means[0], coarseMm);
  const around: Float32Array[] = [];
  for (const plane of means) around.push(yield* blurred(plane, surroundMm));
  const contrast = yield* blurred(contrastOf(means[0], fine, coarse), contrastMm);
  const apart = yield* blurred(distancesOf(means, around), colourMm);
  // All of it is smooth by now.
  const coarser = yield* cellMeans([contrast, apart, ...means], grid, coarserCells);
  const [seenContrast, seenApart, ...colours] = coarser.means;
  const [mostContrast, mostApart] = [quantile(seenContrast, 0.9), quantile(seenApart, 0.9)];
  const times = (value: number, most: number): number =>
    most > 0 ? Math.min(mostTimes, value / most) : 0;
  const drawn = seenApart.map(
    (own, i) => contrastShare * times(seenContrast[i], mostContrast) + times(own, mostApart),
  );
  return {
    grid: coarser.grid,
    cellsPerMm: cellsPerMm / coarserCells,
    drawn,
    contrast: seenContrast,
    colours,
  };
}

/** Weight of every place along one side of the grid by its distance from `from`, in sides of the sheet. */
const fallAlong = (cells: number, from: number, square: number): Float64Array =>
  Float64Array.from({ length: cells }, (_, n) => {
    const away = (n + 0.5) / cells - from;
    return Math.exp(-(away * away) / square);
  });

/** A plane weighed by the distance of its places from one of them. */
function weighed(
  plane: Float32Array,
  { width, height }: PixelSize,
  [x, y]: Point,
  square: number,
): Float32Array {
  const across = fallAlong(width, x, square);
  const down = fallAlong(height, y, square);
  const out = new Float32Array(plane.length);
  for (let row = 0, i = 0; row < height; row++) {
    for (let column = 0; column < width; column++, i++) {
      out[i] = plane[i] * across[column] * down[row];
    }
  }
  return out;
}

/** Where most of a plane gathers, its cube counting, 0..1 of the sides; null where it is empty. */
function gathers(plane: Float32Array, { width, height }: PixelSize): Point | null {
  let [sum, x, y] = [0, 0, 0];
  for (let row = 0, i = 0; row < height; row++) {
    for (let column = 0; column < width; column++, i++) {
      const weight = plane[i] * plane[i] * plane[i];
      sum += weight;
      x += weight * (column + 0.5);
      y += weight * (row + 0.5);
    }
  }
  return sum > 0 ? [x / sum / width, y / sum / height] : null;
}

/**
 * Attention weighed by place: nearer to the middle of the sheet counts more, and nearer to where attention gathers,
 * which is sought from the middle (mean shift; Fukunaga and Hostetler 1975).
 */
function placed({ drawn, grid }: Attention): Float32Array {
  const middle: Point = [0.5, 0.5];
  const central = weighed(drawn, grid, middle, sheetFall);
  let centre = middle;
  let near = central;
  for (let round = 0; round <= shifts; round++) {
    near = weighed(central, grid, centre, gatherFall);
    centre = gathers(near, grid) ?? centre;
  }
  return near;
}

/** The one or two largest connected pieces of a mask, each as a mask. */
function* largestPieces(mask: Uint8Array, grid: PixelSize): Generator<void, Uint8Array[]> {
  const labels = yield* labelRuns(mask, grid);
  const { kinds, areasPx } = labels;
  const order = [...kinds.keys()]
    .filter((shape) => kinds[shape] === 1)
    .sort((one, other) => areasPx[other] - areasPx[one]);
  const [first, second] = order;
  if (first === undefined) return [];
  const isTwo = second !== undefined && areasPx[second] >= secondPiece * areasPx[first];
  return (isTwo ? [first, second] : [first]).map((shape) =>
    maskOfShape(labels, shape, mask.length),
  );
}

/** Mean over the cells of a mask that hold the value. */
function meanWhere(values: Float32Array, mask: Uint8Array, value: number): number {
  let [sum, count] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    if (mask[i] !== value) continue;
    sum += values[i];
    count++;
  }
  return count > 0 ? sum / count : 0;
}

/**
 * Whether what lies in the mask (1) stands out: it draws the eye more than the rest does, and differs from what lies
 * right round it. A horizon does not: on either side of it all goes on as in the mask.
 */
function standsOut(
  { grid, cellsPerMm, drawn, contrast, colours }: Attention,
  mask: Uint8Array,
): boolean {
  const away = chamferDistances(mask, 1, grid);
  const ring = mask.map((own, i) => (own === 1 ? 1 : away[i] <= ringMm * cellsPerMm ? 2 : 0));
  const times = meanWhere(drawn, mask, 1) / (meanWhere(drawn, mask, 0) || 1);
  const sharper = meanWhere(contrast, ring, 1) / (meanWhere(contrast, ring, 2) || 1);
  const [l, a, b] = colours.map((plane) => meanWhere(plane, ring, 1) - meanWhere(plane, ring, 2));
  const apart = Math.hypot(lightnessShare * l, a, b);
  if (times < standsOutTimes || apart < leastApart) return false;
  return apart >= plainlyApart || sharper >= sharperTimes;
}

/** Corners of the cells of a mask, 0..1 of the sheet's sides. */
function cornersOf(mask: Uint8Array, { width, height }: PixelSize): Point[] {
  const corners: Point[] = [];
  for (let y = 0; y < height; y++) {
    const [first, last] = [mask.indexOf(1, y * width), mask.lastIndexOf(1, (y + 1) * width - 1)];
    if (first < y * width || first >= (y + 1) * width) continue;
    for (const line of [y, y + 1]) {
      corners.push([(first - y * width) / width, line / height]);
      corners.push([(last + 1 - y * width) / width, line / height]);
    }
  }
  return corners;
}

/** What is proposed is drawn so much wider than the thing: she sees it whole in the line (own). */
const looseTimes = 1.08;

/** A loop made wider about the mean of its points, within the sheet. */
function widened(path: readonly Point[], times: number): Point[] {
  const mean = (axis: 0 | 1): number => path.reduce((sum, at) => sum + at[axis], 0) / path.length;
  const [x, y] = [mean(0), mean(1)];
  const within = (value: number): number => Math.min(1, Math.max(0, value));
  return path.map(([px, py]) => [within(x + times * (px - x)), within(y + times * (py - y))]);
}

/**
 * A loose circle round the thing that stands out in a picture, or, where there is no such thing, round the one or two
 * places of at most about 14 % of the sheet that do; null where nothing does. `planes` are its simplified planes. Deterministic. Hands back control now and then.
 */
export function* proposeSubject(
  planes: LabPlanes,
  raster: LinearRaster,
  pxPerMm: number,
): Generator<void, SubjectStroke | null> {
  const seen = yield* attention(planes, raster, pxPerMm);
  const drawn = placed(seen);
  const most = drawn.reduce((one, other) => Math.max(one, other), 0);
  const from = Math.max(quantile(drawn, 1 - mostShare), leastOfMost * most);
  const mask = Uint8Array.from(drawn, (own) => (own > from ? 1 : 0));
  const pieces = yield* largestPieces(mask, seen.grid);
  if (pieces.length === 0) return null;
  const chosen = mask.map((_, i) => (pieces.some((piece) => piece[i] === 1) ? 1 : 0));
  if (!standsOut(seen, chosen)) return null;
  const { grid } = seen;
  const [lightness, ...hues] = seen.colours;
  const colours = [lightness.map((own) => lightnessShare * own), ...hues];
  const thing = yield* wholeThing({ grid, drawn, colours });
  const path = joinLoops(
    (thing ? [thing] : pieces).map((piece) => convexHull(cornersOf(piece, grid))),
  );
  return { mode: 'circle', path: thinStroke(widened(path, looseTimes)), brush: 0 };
}
