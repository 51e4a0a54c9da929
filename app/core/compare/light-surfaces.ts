import { solveLinear } from '../numeric/solve.ts';
import { type Light, withoutCurve } from '../paint/measure/camera.ts';
import type { CellKind, LightCell } from './light-cells.ts';
import { caughtIn, type LightSpace } from './light-spaces.ts';

/** Cells stray so far from the surface without being something else, as parts of the light (own). */
export const strays: Readonly<Record<CellKind, number>> = { paper: 0.03, verge: 0.04, paint: 0.1 };
/** With fewer bare cells there is no bare paper to speak of. */
export const enoughPaper = 12;
/**
 * All painted cells together say how bright the light is no more surely than to this deviation: where her paints are
 * stronger or weaker, all of them are off at once (own).
 */
const paintedSpread = 0.03;
/** Painted cells count as so many independent ones, at most (own): shapes, not cells, are independent. */
export const independent = 60;
/** All bare paper as so many: nearly as much, for paints may be weak as one (own). */
const paperWorth = 40;
/** And all of the verge as so many: it may be the board (own). */
const vergeWorth = 6;
/** Deviations of what is expected of light before it is looked at: slopes, bends, and paper of the verge (own). */
const slopeSpread = 0.3;
const bendSpread = 0.1;
export const vergeSpread = 0.1;
const hueSlopeSpread = 0.1;

export interface Straightened {
  readonly cell: LightCell;
  /** 1, x, y, x^2, xy, y^2, and 1 for the verge. */
  readonly row: readonly number[];
  /** Logarithms of what was caught over the expected: the middle plane, red and blue beside it. */
  readonly bright: number;
  readonly red: number;
  readonly blue: number;
}

/** Under it nothing is told from black. */
const dark = 1e-4;

export function straightened(
  cells: readonly LightCell[],
  curve: number,
  space: LightSpace,
): Straightened[] {
  const logsOf = (light: Light): Light => {
    const [one, two, three] = caughtIn(space, light).map((caught) =>
      Math.log(Math.max(dark, caught)),
    );
    return [one, two, three];
  };
  return cells.map((cell) => {
    const [r, g, b] = cell.light;
    const caught = logsOf([withoutCurve(r, curve), withoutCurve(g, curve), withoutCurve(b, curve)]);
    const expected = logsOf(cell.expected);
    const log = (c: 0 | 1 | 2): number => caught[c] - expected[c];
    const bright = log(1);
    const row = [1, cell.x, cell.y, cell.x ** 2, cell.x * cell.y, cell.y ** 2];
    row.push(cell.kind === 'verge' ? 1 : 0);
    return { cell, row, bright, red: log(0) - bright, blue: log(2) - bright };
  });
}

/** Place of the verge's term in a row. */
export const vergeTerm = 6;

/**
 * Least squares for the first `size` terms and one more, the offset of the verge, with what is expected of each: one
 * surface for every value of the cells.
 */
function fitted(
  cells: readonly Straightened[],
  weights: Float64Array,
  size: number,
  values: readonly ('bright' | 'red' | 'blue')[],
  spreads: readonly number[],
): Float64Array[] {
  const all = size + 1;
  const matrix = new Float64Array(all * all);
  const rights = values.map(() => new Float64Array(all));
  const own = new Float64Array(all);
  for (let n = 0; n < cells.length; n++) {
    const { row } = cells[n];
    for (let i = 0; i < size; i++) own[i] = row[i];
    own[size] = row[vergeTerm];
    for (let i = 0; i < all; i++) {
      const term = weights[n] * own[i];
      for (let j = 0; j <= i; j++) matrix[i * all + j] += term * own[j];
    }
    for (let v = 0; v < values.length; v++) {
      const value = weights[n] * cells[n][values[v]];
      for (let i = 0; i < all; i++) rights[v][i] += value * own[i];
    }
  }
  // Weights are in inverse variances of a hundred independent cells at the most.
  for (let i = 0; i < all; i++) matrix[i * all + i] += 1 / spreads[i] ** 2;
  for (const right of rights) solveLinear(Float64Array.from(matrix), right, all);
  return rights;
}

const bendSpreads = [bendSpread, bendSpread, bendSpread];
const brightSpreads = [10, slopeSpread, slopeSpread, ...bendSpreads, vergeSpread];
const hueSpreads = [10, hueSlopeSpread, hueSlopeSpread, vergeSpread];

const valueAt = (surface: Float64Array, row: readonly number[], size: number): number => {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += surface[i] * row[i];
  return sum;
};

export interface Fitted {
  readonly bright: Float64Array;
  readonly red: Float64Array;
  readonly blue: Float64Array;
  /** What is left of every cell's logarithm. */
  readonly left: Float64Array;
  /** How badly the cells agree, what strays far left out. */
  readonly cost: number;
}

/** Surfaces through the cells that agree with a first guess of the level, more and more strictly. */
function fitFrom(cells: readonly Straightened[], level: number, passes: readonly number[]): Fitted {
  const painted = cells.filter(({ cell }) => cell.kind === 'paint').length;
  const scale = 100 / Math.max(100, cells.length);
  const paintBase = Math.min(
    1,
    (strays.paint / paintedSpread) ** 2 / (scale * Math.max(1, painted)),
  );
  const verge = cells.filter(({ cell }) => cell.kind === 'verge').length;
  const bare = cells.filter(({ cell }) => cell.kind === 'paper').length;
  const worths: Readonly<Record<CellKind, number>> = {
    paint: independent / Math.max(1, painted),
    verge: vergeWorth / Math.max(1, verge),
    paper: paperWorth / Math.max(enoughPaper, bare),
  };
  const weights = new Float64Array(cells.length);
  const left = new Float64Array(cells.length);
  let bright: Float64Array = new Float64Array(7);
  let red: Float64Array = new Float64Array(4);
  let blue: Float64Array = new Float64Array(4);
  let cost = 0;
  bright[0] = level;
  for (const [pass, strict] of passes.entries()) {
    cost = (bright[vergeTerm] / vergeSpread) ** 2;
    for (let n = 0; n < cells.length; n++) {
      const { cell, row, bright: own, red: reddish, blue: bluish } = cells[n];
      const offset = row[vergeTerm];
      left[n] = own - valueAt(bright, row, 6) - offset * bright[vergeTerm];
      const hue =
        pass === 0
          ? 0
          : Math.hypot(
              reddish - valueAt(red, row, 3) - offset * red[3],
              bluish - valueAt(blue, row, 3) - offset * blue[3],
            );
      const stray = strays[cell.kind];
      const away = Math.hypot(left[n], hue) / (strict * stray);
      const base = (scale * (cell.kind === 'paint' ? paintBase : 1)) / (stray * stray);
      // Geman and McClure (1987): what strays far counts for nothing.
      weights[n] = base / (1 + away * away) ** 2;
      cost += (worths[cell.kind] * away * away) / (1 + away * away);
    }
    [bright] = fitted(cells, weights, 6, ['bright'], brightSpreads);
    [red, blue] = fitted(cells, weights, 3, ['red', 'blue'], hueSpreads);
  }
  return { bright, red, blue, left, cost };
}

/** What a share of the cells of a kind lies under; null where there are none. */
function quantileOf(cells: readonly Straightened[], kind: CellKind, share: number): number | null {
  const own = cells.filter(({ cell }) => cell.kind === kind).map(({ bright }) => bright);
  return own.sort((one, two) => one - two)[Math.floor(share * (own.length - 1))] ?? null;
}

/** First guesses of the level: bare paper is paper, the lightest of the verge is, or painted cells are as planned. */
export const guesses: readonly (readonly [kind: CellKind, share: number])[] = [
  ...([
    ['paper', 0.5],
    ['verge', 0.8],
  ] as const),
  ...([0.25, 0.5, 0.75] as const).map((share) => ['paint', share] as const),
];
const passes = [3, 2, 1, 1] as const;

export function fitSurfaces(cells: readonly Straightened[], guess: number): Fitted | null {
  const [kind, share] = guesses[guess];
  const level = quantileOf(cells, kind, share);
  return level === null ? null : fitFrom(cells, level, passes);
}
