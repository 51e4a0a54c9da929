import { chamferDistances } from '../../raster/distance-map.ts';
import { labelRuns, maskOfShape } from '../../raster/label-shapes.ts';
import type { PixelSize } from '../../raster/size.ts';

// What draws the eye is often the middle of a thing, or its edge against the light. Things are looked for as pieces of
// like colour: the cells sorted into few colours, each cut through where it is narrow. All figures: own, set on the
// eight photographs of the tests.
const colourCounts = [2, 3, 4, 5, 6] as const;
/** Pieces hang together through nothing narrower than twice this, cells. */
const necks = [0, 2.5, 5, 8] as const;
/** Of the sheet: a thing is no smaller and no larger. */
const [leastShare, mostShare] = [0.015, 0.4] as const;
/** A core left by cutting is no thing's under this share of the sheet. */
const leastCore = 0.005;
/** Colours on either side of a thing's outline that are so far apart stand out fully. */
const fullyApart = 20;
/** Share of the sheet that draws the eye as much as it can. */
const mostDrawn = 0.02;
const mostRounds = 20;

/** What of a picture draws the eye, by cell; and what it is made of, L* at its share. */
interface SeenCells {
  readonly grid: PixelSize;
  readonly drawn: Float32Array;
  readonly colours: readonly Float32Array[];
}

/** Cells sorted into so many colours (Lloyd, 'Least Squares Quantization in PCM', 1982), begun along the lightness. */
function sortByColour(planes: readonly Float32Array[], count: number): Uint8Array {
  const cells = planes[0].length;
  const order = Float32Array.from(planes[0]).sort();
  const centres = Array.from({ length: count }, (_, c) => {
    const lightness = order[Math.floor(((c + 0.5) / count) * cells)];
    const cell = planes[0].indexOf(lightness);
    return planes.map((plane) => plane[cell]);
  });
  const kinds = new Uint8Array(cells);
  for (let round = 0; round < mostRounds; round++) {
    const sums = centres.map(() => [0, 0, 0, 0]);
    let moved = 0;
    for (let i = 0; i < cells; i++) {
      let nearest = 0;
      let least = Number.POSITIVE_INFINITY;
      for (let c = 0; c < count; c++) {
        const [l, a, b] = centres[c];
        const distance =
          (planes[0][i] - l) ** 2 + (planes[1][i] - a) ** 2 + (planes[2][i] - b) ** 2;
        if (distance >= least) continue;
        least = distance;
        nearest = c;
      }
      if (kinds[i] !== nearest) moved++;
      kinds[i] = nearest;
      const sum = sums[nearest];
      for (let p = 0; p < 3; p++) sum[p] += planes[p][i];
      sum[3]++;
    }
    if (round > 0 && moved === 0) break;
    for (const [c, sum] of sums.entries()) {
      if (sum[3] > 0) centres[c] = [sum[0] / sum[3], sum[1] / sum[3], sum[2] / sum[3]];
    }
  }
  return kinds;
}

/** The mask with all that does not reach the sheet's border from outside it. */
function* filled(mask: Uint8Array, grid: PixelSize): Generator<void, Uint8Array> {
  const { width, height } = grid;
  const { shapes, kinds, runs } = yield* labelRuns(mask, grid);
  const open = new Set<number>();
  for (let run = 0; run < shapes.length; run++) {
    const [first, last] = [runs.starts[run], runs.starts[run + 1] - 1];
    const touches =
      first < width ||
      last >= (height - 1) * width ||
      first % width === 0 ||
      last % width === width - 1;
    if (touches && kinds[shapes[run]] === 0) open.add(shapes[run]);
  }
  const whole = mask.slice();
  for (let run = 0; run < shapes.length; run++) {
    if (!open.has(shapes[run])) whole.fill(1, runs.starts[run], runs.starts[run + 1]);
  }
  return whole;
}

/** The pieces of a mask that hang together through nothing as narrow as that, each whole and without holes. */
function* piecesOf(mask: Uint8Array, grid: PixelSize, neck: number): Generator<void, Uint8Array[]> {
  const deep = neck > 0 ? chamferDistances(yield* filled(mask, grid), 0, grid) : null;
  const cores = deep ? mask.map((_, i) => (deep[i] > neck ? 1 : 0)) : mask;
  const labels = yield* labelRuns(cores, grid);
  const { areasPx, kinds } = labels;
  const pieces: Uint8Array[] = [];
  for (let shape = 0; shape < areasPx.length; shape++) {
    if (kinds[shape] !== 1 || areasPx[shape] < leastCore * mask.length) continue;
    const core = maskOfShape(labels, shape, mask.length);
    const away = chamferDistances(core, 1, grid);
    pieces.push(
      yield* filled(neck > 0 ? core.map((_, i) => (away[i] <= neck ? 1 : 0)) : core, grid),
    );
  }
  return pieces;
}

/** Mean difference of colour across the outline of a mask, two cells from it, and the outline's length in cells. */
function outlineOf(mask: Uint8Array, { width }: PixelSize, colours: SeenCells['colours']) {
  let [apart, length] = [0, 0];
  const across = (i: number, by: number): void => {
    if (mask[i] === mask[i + by]) return;
    const beside = (from: number, step: number): number =>
      mask[from + step] === mask[from] ? from + step : from;
    const [one, other] = [beside(i, -by), beside(i + by, by)];
    apart += Math.hypot(...colours.map((plane) => plane[one] - plane[other]));
    length++;
  };
  for (let i = 0; i < mask.length; i++) {
    if (i % width < width - 1) across(i, 1);
    if (i + width < mask.length) across(i, width);
  }
  return { apart: length > 0 ? apart / length : 0, length };
}

const areaOf = (mask: Uint8Array): number => mask.reduce((sum, own) => sum + own, 0);

/** Cells of a mask at the border of the sheet. */
const atBorder = (mask: Uint8Array, { width, height }: PixelSize): number =>
  mask.reduce((sum, own, i) => {
    const x = i % width;
    const isAt = x === 0 || x === width - 1 || i < width || i >= (height - 1) * width;
    return sum + (isAt ? own : 0);
  }, 0);

/** A mask, its cells, and how likely it is the thing. */
interface Thing {
  readonly mask: Uint8Array;
  readonly area: number;
  readonly worth: number;
}

/** Nearly as good as the best are those of this share of its worth; masks that share so much of their cells show one thing. */
const nearlyAsGood = 0.4;
const sameThing = 0.4;
/** A cell is of the thing where masks of this share of their worth hold it. */
const heldBy = 0.4;
/** What hangs on a thing by less than this share of its size (the root of its area) to either side is none of it. */
const leastNeck = 0.15;

/** The area two masks share, of that either has. */
function overlap(one: Thing, other: Thing): number {
  const both = one.mask.reduce((sum, own, i) => sum + own * other.mask[i], 0);
  return both / (one.area + other.area - both);
}

const worthOf = (things: readonly Thing[]): number =>
  things.reduce((sum, { worth }) => sum + worth, 0);

/**
 * Many masks show about the same thing. It is the one whose masks together are worth most, so that no single lucky one
 * decides: the cells enough of them hold, each by its worth.
 */
function agreedOn(found: readonly Thing[]): Uint8Array | null {
  const best = found.reduce((most, { worth }) => Math.max(most, worth), 0);
  const good = found.filter(({ worth }) => worth >= nearlyAsGood * best);
  let chosen: readonly Thing[] = [];
  for (const thing of good) {
    const alike = good.filter((other) => overlap(thing, other) >= sameThing);
    if (worthOf(alike) > worthOf(chosen)) chosen = alike;
  }
  const enough = heldBy * worthOf(chosen);
  if (enough === 0) return null;
  return chosen[0].mask.map((_, i) =>
    chosen.reduce((sum, { mask, worth }) => sum + worth * mask[i], 0) >= enough ? 1 : 0,
  );
}

/**
 * The one thing in a picture that draws the eye most, 1 for its cells; null where there is none of a size to be one. It
 * holds much of what draws the eye and little else, stands out along its outline, is of one piece and is not cut off by
 * the sheet. Deterministic. Hands back control now and then.
 */
export function* wholeThing({
  grid,
  drawn,
  colours,
}: SeenCells): Generator<void, Uint8Array | null> {
  const cells = drawn.length;
  const all = drawn.reduce((sum, own) => sum + own, 0);
  const sorted = Float32Array.from(drawn).sort();
  const most = sorted[Math.floor((1 - mostDrawn) * cells)];
  if (!(most > 0)) return null;
  const found: Thing[] = [];
  for (const count of colourCounts) {
    const kinds = sortByColour(colours, count);
    yield;
    for (let kind = 0; kind < count; kind++) {
      const own = kinds.map((other) => (other === kind ? 1 : 0));
      for (const neck of necks) {
        for (const mask of yield* piecesOf(own, grid, neck)) {
          const area = areaOf(mask);
          if (area < leastShare * cells || area > mostShare * cells) continue;
          const held = mask.reduce((sum, one, i) => sum + one * drawn[i], 0);
          const [purity, share] = [held / area / most, held / all];
          const { apart, length } = outlineOf(mask, grid, colours);
          const roundness = Math.min(1, (4 * Math.PI * area) / (length * length || 1));
          const worth =
            (((2 * purity * share) / (purity + share || 1)) *
              Math.min(1, apart / fullyApart) *
              roundness) /
            (1 + atBorder(mask, grid) / Math.sqrt(area));
          if (worth > 0) found.push({ mask, area, worth });
        }
      }
    }
  }
  const agreed = agreedOn(found);
  if (!agreed) return null;
  const size = Math.sqrt(areaOf(agreed));
  const pieces = yield* piecesOf(agreed, grid, leastNeck * size);
  return pieces.reduce((one, other) => (areaOf(other) > areaOf(one) ? other : one), agreed.fill(0));
}
