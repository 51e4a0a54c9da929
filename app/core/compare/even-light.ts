import { lightnessOfLuminance, luminanceOfLightness } from '../colour/lightness.ts';
import { usualCurve } from '../paint/measure/camera.ts';
import type { CellKind, LightCell } from './light-cells.ts';
import { type LightSpace, lightSpaces } from './light-spaces.ts';
import {
  enoughPaper,
  type Fitted,
  fitSurfaces,
  guesses,
  independent,
  type Straightened,
  straightened,
  strays,
  vergeSpread,
  vergeTerm,
} from './light-surfaces.ts';

/**
 * The light on the sheet and the camera that saw it. For every plane the natural logarithm of the light is a surface
 * over the sheet: of second order for how bright it is, a plane for its colour.
 */
export interface SheetLight {
  /** Strength of the camera's tone curve, as `withoutCurve` takes it back. */
  readonly curve: number;
  /** The planes in which the light acts, and in which the surfaces are. */
  readonly space: LightSpace;
  /** 1, x, y, x^2, xy, y^2 of the middle plane. */
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

type Pause = () => Promise<void>;

/** A painted cell is off by so much without anything being wrong with curve or paint, L* (own). */
const usualMiss = 1.2;
/** Her paints together may be so much weaker or stronger than planned: deviation of the logarithm of what lies there (own). */
const strengthSpread = 0.05;
/** No wash gets darker than about this, L* (own). */
const darkestWash = 16;
const strengths = Array.from({ length: 17 }, (_, n) => (n - 8) * 0.025);
/** How far a camera's curve may be from the usual one: wide, for here the whole sheet tells (own). */
const curveSpread = 0.3;
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
  const lighter = expected.map((lightness) => lighterBy(lightness, paper));
  let least = Number.POSITIVE_INFINITY;
  for (const more of strengths) {
    let sum = 0;
    for (let n = 0; n < worth.length; n++) {
      const off = (seen[n] - expected[n] - more * lighter[n]) / usualMiss;
      sum += (worth[n] * off * off) / (1 + (off * off) / 4);
    }
    least = Math.min(least, sum + (more / strengthSpread) ** 2);
  }
  return least + straying + (bright[vergeTerm] / vergeSpread) ** 2;
}

/**
 * By how much a wash grows lighter with less paint, L* for a logarithm of 1: darkening nears its end exponentially, so
 * middle tones move most.
 */
function lighterBy(lightness: number, paper: number): number {
  const most = paper - darkestWash;
  const left = Math.min(1, Math.max(0.02, 1 - (paper - lightness) / most));
  return -most * left * Math.log(left);
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

/** A tone curve, the first guess of the level that fits best with it, and how badly it fits. */
interface Tried {
  readonly curve: number;
  readonly cost: number;
  readonly guess: number;
}

function bestGuess(
  cells: readonly Straightened[],
  curve: number,
  paper: number,
  shares: Readonly<Record<CellKind, number>>,
): Tried {
  const prior = ((curve - usualCurve) / curveSpread) ** 2;
  let best = { curve, cost: Number.POSITIVE_INFINITY, guess: 0 };
  for (let guess = 0; guess < guesses.length; guess++) {
    const surfaces = fitSurfaces(cells, guess);
    if (!surfaces) continue;
    const cost = misfit(cells, surfaces, paper, shares) + prior;
    if (cost < best.cost) best = { curve, cost, guess };
  }
  return best;
}

/** What was tried of one space of the light, by the place of its curve; `best` costs least. */
interface TriedCurves {
  readonly space: LightSpace;
  readonly tried: Tried[];
  readonly best: number;
}

const leastCost = (tried: readonly Tried[]): number =>
  tried.reduce((least, { cost }, n) => (cost < tried[least].cost ? n : least), 0);

/** Downhill from the curve that was best in another space, until those beside the best one cost more. */
async function tryAround(
  from: number,
  tryCurve: (curve: number) => Promise<Tried>,
): Promise<Omit<TriedCurves, 'space'>> {
  const tried: Tried[] = [];
  let best = from;
  for (;;) {
    for (const n of [best - 1, best, best + 1])
      if (curves[n] !== undefined) tried[n] ??= await tryCurve(curves[n]);
    const [before, here, after] = [tried[best - 1], tried[best], tried[best + 1]];
    if (before && before.cost < here.cost) best--;
    else if (after && after.cost < here.cost) best++;
    else return { tried, best };
  }
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
  const tryCurve = async (space: LightSpace, curve: number): Promise<Tried> => {
    await pause();
    return bestGuess(straightened(few, curve, space), curve, paper, shares);
  };
  const [first, ...others] = lightSpaces;
  const everywhere: Tried[] = [];
  for (const curve of curves) everywhere.push(await tryCurve(first, curve));
  let chosen: TriedCurves = { space: first, tried: everywhere, best: leastCost(everywhere) };
  for (const space of others) {
    const found = await tryAround(chosen.best, (curve) => tryCurve(space, curve));
    if (found.tried[found.best].cost < chosen.tried[chosen.best].cost) chosen = { space, ...found };
  }
  const { space, tried, best } = chosen;
  const { curve, spread } = lowestOf(tried, best);
  const own = straightened(someOf(all, { ...whole, paint: mostPainted }), curve, space);
  const surfaces = fitSurfaces(own, tried[best].guess);
  if (!surfaces) return null;
  const { bright, red, blue, left } = surfaces;
  const agreeing = (kind: CellKind): number =>
    own.filter(({ cell }, n) => cell.kind === kind && Math.abs(left[n]) < 2 * strays[kind]).length;
  const inside = own.filter(({ cell }) => cell.kind !== 'verge').length;
  const verge = own.length - inside;
  return {
    ...{ curve, space, bright: bright.slice(0, 6), red: red.slice(0, 3), blue: blue.slice(0, 3) },
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
  if (!before || !after) return { curve: here.curve, spread: curveSpread };
  const bend = before.cost + after.cost - 2 * here.cost;
  const step = after.curve - here.curve;
  if (!(bend > 1e-6)) return { curve: here.curve, spread: curveSpread };
  const shift = (step * (before.cost - after.cost)) / (2 * bend);
  return {
    curve: here.curve + Math.max(-step, Math.min(step, shift)),
    spread: Math.min(curveSpread, step * Math.sqrt(2 / bend)),
  };
}
