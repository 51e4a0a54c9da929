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
  /** Share of the verge round the sheet that agrees with being paper. */
  readonly vergeShare: number;
  /** How far the lightness of middle tones may be off because of the curve, L*. */
  readonly doubt: number;
}

/** Cells stray so far from the surface without being something else, as parts of the light (own). */
const strays: Readonly<Record<CellKind, number>> = { paper: 0.03, verge: 0.025, paint: 0.1 };
/** With fewer bare cells there is no bare paper to speak of. */
const enoughPaper = 12;
/**
 * All painted cells together say how bright the light is no more surely than to this deviation: where her paints are
 * stronger or weaker, all of them are off at once (own).
 */
const paintedSpread = 0.03;
/** Painted cells count as so many independent ones, at most (own): shapes, not cells, are independent. */
const independent = 60;
/** All bare paper as so many: nearly as much, for paints may be weak as one (own). */
const paperWorth = 40;
/** And all of the verge as so many: it may be the board (own). */
const vergeWorth = 6;
/** Deviations of what is expected of light before it is looked at: slopes, bends, and paper of the verge (own). */
const slopeSpread = 0.3;
const bendSpread = 0.1;
const vergeSpread = 0.1;
const hueSlopeSpread = 0.1;

interface Straightened {
  readonly cell: LightCell;
  /** 1, x, y, x^2, xy, y^2, and 1 for the verge. */
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
    row.push(cell.kind === 'verge' ? 1 : 0);
    return { cell, row, bright, red: log(0) - bright, blue: log(2) - bright };
  });
}

/** Place of the verge's term in a row. */
const vergeTerm = 6;

/** Least squares for the first `size` terms and one more, the offset of the verge, with what is expected of each. */
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
      const term = weights[n] * (i === size ? row[vergeTerm] : row[i]);
      right[i] += own * (i === size ? row[vergeTerm] : row[i]);
      for (let j = 0; j < i; j++) matrix[i * all + j] += term * row[j];
      matrix[i * all + i] += term * (i === size ? row[vergeTerm] : row[i]);
    }
  }
  // Weights are in inverse variances of a hundred independent cells at the most.
  for (let i = 0; i < all; i++) matrix[i * all + i] += 1 / spreads[i] ** 2;
  solveLinear(matrix, right, all);
  return right;
}

const bendSpreads = [bendSpread, bendSpread, bendSpread];
const brightSpreads = [10, slopeSpread, slopeSpread, ...bendSpreads, vergeSpread];
const hueSpreads = [10, hueSlopeSpread, hueSlopeSpread, vergeSpread];

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
    bright = fitted(cells, weights, 6, (cell) => cell.bright, brightSpreads);
    red = fitted(cells, weights, 3, (cell) => cell.red, hueSpreads);
    blue = fitted(cells, weights, 3, (cell) => cell.blue, hueSpreads);
  }
  return { bright, red, blue, left, cost };
}

/** What a share of the cells of a kind lies under; null where there are none. */
function quantileOf(cells: readonly Straightened[], kind: CellKind, share: number): number | null {
  const own = cells.filter(({ cell }) => cell.kind === kind).map(({ bright }) => bright);
  return own.sort((one, two) => one - two)[Math.floor(share * (own.length - 1))] ?? null;
}

/** First guesses of the level: bare paper is paper, the lightest of the verge is, or painted cells are as planned. */
const guesses: readonly (readonly [kind: CellKind, share: number])[] = [
  ...([
    ['paper', 0.5],
    ['verge', 0.8],
  ] as const),
  ...([0.25, 0.5, 0.75] as const).map((share) => ['paint', share] as const),
];
const passes = [3, 2, 1, 1] as const;

type Pause = () => Promise<void>;

function fitSurfaces(cells: readonly Straightened[], guess: number): Fitted | null {
  const [kind, share] = guesses[guess];
  const level = quantileOf(cells, kind, share);
  return level === null ? null : fitFrom(cells, level, passes);
}

/** A painted cell is off by so much without anything being wrong with curve or paint, L* (own). */
const usualMiss = 1.2;
/** Her paints together may be so much weaker or stronger than planned, a share of what they darken (own). */
const strengthSpread = 0.12;
const strengths = Array.from({ length: 13 }, (_, n) => (n - 6) * 0.05);
/** Tone curves that are tried: beyond these lies no camera. */
const curves = Array.from({ length: 8 }, (_, n) => -0.1 + 0.09 * n);
/** All cells of a kind. */
const whole = { paint: 1e9, paper: 1e9, verge: 1e9 } as const;
/** So many cells are looked at, at most, spread over the sheet: they cost time and tell no more; fewer to choose by. */
const mostPainted = 1500;
const mostToChoose: Readonly<Record<CellKind, number>> = { paint: 500, paper: 200, verge: 120 };

/** What of the verge is darker than paper may be the board, and says little; nothing is lighter than paper (own). */
const darkerVerge = 0.15;

/**
 * How badly cells agree with the expected sheet: by how they are off in L*, whatever the strength of all her paints
 * together, so that weak paint is not taken for a curve of the camera. Bare paper counts by its area as paint does,
 * the verge by half as much, and a cell that strays far for no more than straying. `shares` are those of the kinds in
 * the sheet, of which `cells` may be a choice.
 */
function misfit(
  cells: readonly Straightened[],
  { left, bright }: Fitted,
  paper: number,
  shares: Readonly<Record<CellKind, number>>,
): number {
  const expected = new Float64Array(cells.length);
  const seen = new Float64Array(cells.length);
  const worth = new Float64Array(cells.length);
  const counts = { paint: 0, paper: 0, verge: 0 };
  for (const { cell } of cells) counts[cell.kind]++;
  let straying = 0;
  for (const [n, { cell }] of cells.entries()) {
    const { kind, lightness } = cell;
    const own = lightnessOfLuminance(luminanceOfLightness(lightness) * Math.exp(left[n]));
    const weight = (independent * shares[kind]) / counts[kind];
    if (kind === 'verge') {
      const off = (own - lightness) / usualMiss;
      const most = (off * off) / (1 + (off * off) / 4);
      straying += weight * (off < 0 ? darkerVerge : 1) * most;
      continue;
    }
    expected[n] = lightness;
    seen[n] = own;
    worth[n] = weight;
  }
  let least = Number.POSITIVE_INFINITY;
  for (const more of strengths) {
    let sum = 0;
    for (let n = 0; n < worth.length; n++) {
      const off = (seen[n] - expected[n] + more * (paper - expected[n])) / usualMiss;
      sum += (worth[n] * off * off) / (1 + (off * off) / 4);
    }
    least = Math.min(least, sum + (more / strengthSpread) ** 2);
  }
  return least + straying + (bright[vergeTerm] / vergeSpread) ** 2;
}

/** What parts the kinds have in the sheet; the verge counts as half a sheet. */
function sharesOf(all: readonly LightCell[]): Readonly<Record<CellKind, number>> {
  const inside = all.filter(({ kind }) => kind !== 'verge').length;
  const bare = all.filter(({ kind }) => kind === 'paper').length;
  const paper = inside > 0 ? bare / inside : 0;
  return { paper, paint: 1 - paper, verge: 0.5 };
}

/** Every so manyth cell of each kind, at most so many. */
function someOf(
  cells: readonly LightCell[],
  most: Readonly<Record<CellKind, number>>,
): LightCell[] {
  return (['paint', 'paper', 'verge'] as const).flatMap((kind) => {
    const own = cells.filter((cell) => cell.kind === kind);
    const stride = Math.max(1, own.length / most[kind]);
    const count = Math.floor(own.length / stride);
    return Array.from({ length: count }, (_, n) => own[Math.floor(n * stride)]);
  });
}

/**
 * The light on the sheet by bare paper, which counts most, by the verge round it where that agrees with paper, and by
 * the painted cells, most of which are as expected. `paper` is its L*. Null where there are hardly any cells. `pause`
 * lets messages in.
 */
export async function findLight(
  all: readonly LightCell[],
  paper: number,
  pause: Pause,
): Promise<SheetLight | null> {
  if (all.length < enoughPaper) return null;
  const few = someOf(all, mostToChoose);
  const shares = sharesOf(all);
  const tried: { readonly curve: number; readonly cost: number; readonly guess: number }[] = [];
  for (const curve of curves) {
    const own = straightened(few, curve);
    let best = { curve, cost: Number.POSITIVE_INFINITY, guess: 0 };
    for (let guess = 0; guess < guesses.length; guess++) {
      const surfaces = fitSurfaces(own, guess);
      if (!surfaces) continue;
      const cost = misfit(own, surfaces, paper, shares) + ((curve - usualCurve) / spreadOfCurves) ** 2;
      if ((globalThis as any).DBG) (globalThis as any).DBG(curve, guess, cost, surfaces.bright, own, surfaces.left);
      if (cost < best.cost) best = { curve, cost, guess };
    }
    tried.push(best);
    await pause();
  }
  const best = tried.reduce((least, each, n) => (each.cost < tried[least].cost ? n : least), 0);
  const { curve, spread } = lowestOf(tried, best);
  const own = straightened(someOf(all, { ...whole, paint: mostPainted }), curve);
  const surfaces = fitSurfaces(own, tried[best].guess);
  if (!surfaces) return null;
  const { bright, red, blue, left } = surfaces;
  const agreeing = (kind: CellKind): number =>
    own.filter(({ cell }, n) => cell.kind === kind && Math.abs(left[n]) < 2 * strays[kind]).length;
  const inside = own.filter(({ cell }) => cell.kind !== 'verge').length;
  const verge = own.length - inside;
  return {
    ...{ curve, bright: bright.slice(0, 6), red: red.slice(0, 3), blue: blue.slice(0, 3) },
    paperShare: agreeing('paper') / Math.max(1, inside),
    vergeShare: agreeing('verge') / Math.max(1, verge),
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
