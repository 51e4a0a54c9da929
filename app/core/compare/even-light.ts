import { lightnessOfLuminance, luminanceOfLightness } from '../colour/lightness.ts';
import { solveLinear } from '../numeric/solve.ts';
import { sensed, spreadOfCurves, usualCurve, withoutCurve } from '../paint/measure/camera.ts';
import type { CellKind, LightCell } from './light-cells.ts';

/**
 * The light on the sheet and the camera that saw it. For every sensor the natural logarithm of the light is a surface
 * over the sheet: of second order for how bright it is, a plane for its colour.
 */
export interface SheetLight {
  /** Strength of the camera's tone curve, as `withoutCurve` takes it back. */
  readonly curve: number;
  /** 1, x, y, x^2, xy, y^2 of the middle sensor. */
  readonly bright: Float64Array;
  /** 1, x, y of the red one and of the blue one beside it. */
  readonly red: Float64Array;
  readonly blue: Float64Array;
  /** Share of the sheet's cells that are bare paper and agree with it. */
  readonly paperShare: number;
  /** Share of the strip round the sheet that agrees with being paper. */
  readonly stripShare: number;
  /** How far the lightness of middle tones may be off because of the curve, L*. */
  readonly doubt: number;
}

/** Cells stray so far from the surface without being something else, as parts of the light (own). */
const strays: Readonly<Record<CellKind, number>> = { paper: 0.03, strip: 0.025, paint: 0.1 };
/** All painted cells together weigh so much beside the bare ones, where there are enough of these (own). */
const paintBesidePaper = 0.05;
const enoughPaper = 12;
/** Deviations of what is expected of light before it is looked at: slopes, bends, and paper of the strip (own). */
const slopeSpread = 0.3;
const bendSpread = 0.1;
const stripSpread = 0.04;
const hueSlopeSpread = 0.1;

interface Straightened {
  readonly cell: LightCell;
  /** 1, x, y, x^2, xy, y^2, and 1 for the strip. */
  readonly row: readonly number[];
  /** Logarithms of what the sensors caught over the expected: the middle one, red and blue beside it. */
  readonly bright: number;
  readonly red: number;
  readonly blue: number;
}

function straightened(cells: readonly LightCell[], curve: number): Straightened[] {
  return cells.map((cell) => {
    const [r, g, b] = cell.light;
    const caught = sensed([withoutCurve(r, curve), withoutCurve(g, curve), withoutCurve(b, curve)]);
    const log = (c: 0 | 1 | 2): number => Math.log(Math.max(1e-4, caught[c])) - cell.expected[c];
    const bright = log(1);
    const row = [1, cell.x, cell.y, cell.x ** 2, cell.x * cell.y, cell.y ** 2];
    row.push(cell.kind === 'strip' ? 1 : 0);
    return { cell, row, bright, red: log(0) - bright, blue: log(2) - bright };
  });
}

/** Place of the strip's term in a row. */
const stripTerm = 6;

/** Least squares for the first `size` terms and one more, the offset of the strip, with what is expected of each. */
function fitted(
  cells: readonly Straightened[],
  weights: Float64Array,
  size: number,
  value: (cell: Straightened) => number,
  spreads: readonly number[],
): Float64Array {
  const all = size + 1;
  const matrix = new Float64Array(all * all);
  const right = new Float64Array(all);
  for (let n = 0; n < cells.length; n++) {
    const { row } = cells[n];
    const own = weights[n] * value(cells[n]);
    for (let i = 0; i < all; i++) {
      const term = weights[n] * (i === size ? row[stripTerm] : row[i]);
      right[i] += own * (i === size ? row[stripTerm] : row[i]);
      for (let j = 0; j < i; j++) matrix[i * all + j] += term * row[j];
      matrix[i * all + i] += term * (i === size ? row[stripTerm] : row[i]);
    }
  }
  // Weights are in inverse variances of a hundred independent cells at the most.
  for (let i = 0; i < all; i++) matrix[i * all + i] += 1 / spreads[i] ** 2;
  solveLinear(matrix, right, all);
  return right;
}

const brightSpreads = [
  10,
  slopeSpread,
  slopeSpread,
  bendSpread,
  bendSpread,
  bendSpread,
  stripSpread,
];
const hueSpreads = [10, hueSlopeSpread, hueSlopeSpread, stripSpread];

const valueAt = (surface: Float64Array, row: readonly number[], size: number): number => {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += surface[i] * row[i];
  return sum;
};

interface Fitted {
  readonly bright: Float64Array;
  readonly red: Float64Array;
  readonly blue: Float64Array;
  /** What is left of every cell's logarithm. */
  readonly left: Float64Array;
}

/** Surfaces through the cells that agree; what agrees is found by looking again and again, more and more strictly. */
function fitSurfaces(cells: readonly Straightened[]): Fitted {
  const bare = cells.filter(({ cell }) => cell.kind === 'paper').length;
  const painted = cells.filter(({ cell }) => cell.kind === 'paint').length;
  const paintWeight =
    bare >= enoughPaper ? Math.min(1, (paintBesidePaper * bare) / Math.max(1, painted)) : 1;
  const weights = new Float64Array(cells.length);
  const left = new Float64Array(cells.length);
  let bright: Float64Array = new Float64Array(7);
  let red: Float64Array = new Float64Array(4);
  let blue: Float64Array = new Float64Array(4);
  const scale = 100 / Math.max(100, cells.length);
  bright[0] = middleOf(cells, bare >= enoughPaper ? 'paper' : 'paint');
  for (const strict of [5, 3, 2, 1, 1, 1]) {
    for (let n = 0; n < cells.length; n++) {
      const { cell, row, bright: own, red: reddish, blue: bluish } = cells[n];
      const offset = row[stripTerm];
      left[n] = own - valueAt(bright, row, 6) - offset * bright[6];
      const isFirst = strict === 5;
      const hue = isFirst
        ? 0
        : Math.hypot(
            reddish - valueAt(red, row, 3) - offset * red[3],
            bluish - valueAt(blue, row, 3) - offset * blue[3],
          );
      const stray = strays[cell.kind];
      const away = Math.hypot(left[n], hue) / (strict * stray);
      const base = cell.kind === 'paint' ? paintWeight : 1;
      // Geman and McClure (1987): what strays far counts for nothing.
      weights[n] = (scale * base) / (stray * stray * (1 + away * away) ** 2);
    }
    bright = fitted(cells, weights, 6, (cell) => cell.bright, brightSpreads);
    red = fitted(cells, weights, 3, (cell) => cell.red, hueSpreads);
    blue = fitted(cells, weights, 3, (cell) => cell.blue, hueSpreads);
  }
  return { bright, red, blue, left };
}

/** Median of the cells of a kind. */
function middleOf(cells: readonly Straightened[], kind: CellKind): number {
  const own = cells.filter(({ cell }) => cell.kind === kind).map(({ bright }) => bright);
  return own.sort((one, two) => one - two)[own.length >> 1] ?? 0;
}

/** A painted cell is off by so much without anything being wrong with curve or paint, L* (own). */
const usualMiss = 2.5;
/** Painted cells count as so many independent ones, at most (own): shapes, not cells, are independent. */
const independent = 60;
/** Her paints together may be so much weaker or stronger than planned, a share of what they darken (own). */
const strengthSpread = 0.12;
const strengths = Array.from({ length: 13 }, (_, n) => (n - 6) * 0.05);
/** Tone curves that are tried: beyond these lies no camera. */
const curves = Array.from({ length: 8 }, (_, n) => -0.1 + 0.09 * n);
/** So many painted cells are looked at, at most, spread over the sheet: they cost time and tell no more. */
const mostPainted = 1500;

/**
 * How badly cells agree with the expected sheet: by how they are off in L*, whatever the strength of all her paints
 * together, so that weak paint is not taken for a curve of the camera.
 */
function misfit(cells: readonly Straightened[], { left }: Fitted, paper: number): number {
  const painted = cells.flatMap(({ cell }, n) =>
    cell.kind === 'paint'
      ? [
          {
            expected: cell.lightness,
            seen: lightnessOfLuminance(luminanceOfLightness(cell.lightness) * Math.exp(left[n])),
          },
        ]
      : [],
  );
  if (painted.length === 0) return 0;
  const worth = Math.min(independent, painted.length) / painted.length;
  return Math.min(
    ...strengths.map((more) => {
      let sum = 0;
      for (const { expected, seen } of painted) {
        const off = (seen - expected + more * (paper - expected)) / usualMiss;
        sum += (off * off) / (1 + (off * off) / 4);
      }
      return worth * sum + (more / strengthSpread) ** 2;
    }),
  );
}

/**
 * The light on the sheet by bare paper, which counts most, by the strip round it where that agrees with paper, and by
 * the painted cells, most of which are as expected. `paper` is its L*. Null where there are hardly any cells.
 */
export function findLight(all: readonly LightCell[], paper: number): SheetLight | null {
  const painted = all.filter(({ kind }) => kind === 'paint');
  const stride = Math.max(1, painted.length / mostPainted);
  const cells = all.filter(({ kind }) => kind !== 'paint');
  for (let n = 0; n < painted.length; n += stride) cells.push(painted[Math.floor(n)]);
  if (cells.length < enoughPaper) return null;
  const tried = curves.map((curve) => {
    const own = straightened(cells, curve);
    const surfaces = fitSurfaces(own);
    const cost = misfit(own, surfaces, paper) + ((curve - usualCurve) / spreadOfCurves) ** 2;
    return { curve, cost };
  });
  const best = tried.reduce((least, each, n) => (each.cost < tried[least].cost ? n : least), 0);
  const { curve, spread } = lowestOf(tried, best);
  const own = straightened(cells, curve);
  const { bright, red, blue, left } = fitSurfaces(own);
  const agreeing = (kind: CellKind): number => {
    const same = own.flatMap(({ cell }, n) => (cell.kind === kind ? [left[n]] : []));
    return same.filter((off) => Math.abs(off) < 2 * strays[kind]).length;
  };
  const inside = own.filter(({ cell }) => cell.kind !== 'strip').length;
  const strip = own.length - inside;
  return {
    curve,
    bright: bright.slice(0, 6),
    red: red.slice(0, 3),
    blue: blue.slice(0, 3),
    paperShare: agreeing('paper') / Math.max(1, inside),
    stripShare: agreeing('strip') / Math.max(1, strip),
    doubt: spread * shiftOfCurve,
  };
}

/** A curve of strength 1 moves tones halfway to white by so much, L*, at most. */
const shiftOfCurve = 9.6;

/** The lowest place of a parabola through the costs beside the least one, and its deviation. */
function lowestOf(tried: readonly { curve: number; cost: number }[], best: number) {
  const [before, here, after] = [tried[best - 1], tried[best], tried[best + 1]];
  if (!before || !after) return { curve: here.curve, spread: spreadOfCurves };
  const bend = before.cost + after.cost - 2 * here.cost;
  const step = after.curve - here.curve;
  if (!(bend > 1e-6)) return { curve: here.curve, spread: spreadOfCurves };
  const shift = (step * (before.cost - after.cost)) / (2 * bend);
  return {
    curve: here.curve + Math.max(-step, Math.min(step, shift)),
    spread: Math.min(spreadOfCurves, step * Math.sqrt(2 / bend)),
  };
}
