import type { Lab } from '../../colour/lab.ts';
import { solveLinear } from '../../numeric/solve.ts';
import type { SureWhy } from '../paint.ts';
import { type JointFit, type JointProblem, jointSquares } from './fit-jointly.ts';
import type { JointPatch } from './joint-patch.ts';
import { quiteSure } from './paint-measure.ts';

/** The noise of patches that is taken for granted counts as much as so many figures measured (own). */
const usualFigures = 10;
/** Figures of a colour. */
const figures = 3;

/**
 * Square of the noise there is, in units of that which was taken for granted: by how much the patches miss the fit and
 * the fit the prior. The mean of an inverse gamma, from an expectation of 1 (Raiffa, Schlaifer (1961), Applied
 * Statistical Decision Theory, from memory).
 */
const noiseFound = (cost: number, patches: number): number =>
  (usualFigures + cost) / (usualFigures + figures * patches);

const along = (row: Float64Array, other: Float64Array): number =>
  row.reduce((sum, slope, i) => sum + slope * other[i], 0);

/**
 * The rows without what the strength of the paint does to them, where a scrap will show that: all K and S times as
 * much as brings the colours of `scraps`, rows likewise, nearest.
 */
function withoutStrength(
  rows: readonly Float64Array[],
  scraps: readonly Float64Array[],
): Float64Array[] {
  const sumOf = (row: Float64Array): number => row.reduce((all, slope) => all + slope, 0);
  const [first] = scraps;
  if (!first) return [...rows];
  const taken = new Float64Array(first.length);
  let squares = 0;
  for (const scrap of scraps) {
    const stronger = sumOf(scrap);
    squares += stronger ** 2;
    for (let i = 0; i < taken.length; i++) taken[i] = taken[i] + stronger * scrap[i];
  }
  return rows.map((row) => {
    const stronger = sumOf(row) / squares;
    return row.map((slope, i) => slope - stronger * taken[i]);
  });
}

/** What the fit of a paint is asked. */
interface Doubted {
  /** Colours of the patches with one fault each that all have together, one standard deviation of it. */
  readonly faulty: readonly (readonly Lab[])[];
  /** Patches whose colours are in question. */
  readonly probes: readonly JointPatch[];
  /** Patches of the paint by itself, which will tell how strong it is. */
  readonly scraps: readonly JointPatch[];
}

/**
 * How uncertain the colours of probes are after a fit of one paint, apart from how strong that is: CIEDE2000, root of
 * the mean square. The inverse of the fit's normal equations is the covariance of what was found (Laplace's
 * approximation), times the noise there is; what is wrong with all patches together comes on top. Infinity where the
 * patches left something open.
 */
export function expectedError(
  problem: JointProblem,
  { place, cost }: Pick<JointFit, 'place' | 'cost'>,
  { faulty, probes, scraps }: Doubted,
): number {
  const squares = jointSquares(problem);
  const { matrix, right } = squares.equationsAt(place);
  const solved = (side: Float64Array): Float64Array | null => {
    const solution = Float64Array.from(side);
    return solveLinear(Float64Array.from(matrix), solution, right.length) ? solution : null;
  };
  const moves = faulty.map((labs) => {
    const patches = problem.patches.map((patch, n) => ({ ...patch, lab: labs[n] }));
    const pulled = jointSquares({ ...problem, patches }).equationsAt(place).right;
    return solved(pulled.map((value, i) => value - right[i]));
  });
  const rowsOf = (patches: readonly JointPatch[]): Float64Array[] =>
    patches.flatMap((patch) => squares.slopesAt(place, patch));
  const noise = noiseFound(cost, problem.patches.length);
  let sum = 0;
  for (const row of withoutStrength(rowsOf(probes), rowsOf(scraps))) {
    const spread = solved(row);
    sum += spread ? noise * along(row, spread) : Infinity;
    for (const move of moves) sum += move ? along(row, move) ** 2 : Infinity;
  }
  return Math.sqrt(sum / probes.length);
}

/** What is known about a fit once it is made. */
interface FitFacts {
  /** Loads of the steps, ascending. */
  readonly loads: readonly number[];
  /**
   * The thinnest step's distance from the bare paper over the furthest step's: near 1 all are
   * strong.
   */
  readonly thinnestShare: number;
  /** Expected CIEDE2000 of its mixes. */
  readonly mixError: number;
  /** Mean CIEDE2000 between patches and fit. */
  readonly misfit: number;
  /** Whether there was a step over black. */
  readonly hidingSeen: boolean;
  /** Whether a frame lies on more than one colour. */
  readonly uneven: boolean;
  readonly isWhite: boolean;
}

/**
 * The fit counts as half sure where mixes are uncertain by this CIEDE2000, clearly seen side by
 * side (own).
 */
const halfSureError = 4.5;
/**
 * If even the thinnest step lies at this share of the strongest one's distance from paper, hardly
 * any paper shines through (own).
 */
const heavyShare = 0.85;
/** Steps that fit worse than this (CIEDE2000) were mixed up, shone, or dried unevenly (own). */
const poorMisfit = 5;
/** What she can put right herself is put right before she is told that it is quite sure. */
const disagreeing = quiteSure - 0.05;
/** And so sure of a white on white paper, at most (own). */
const whiteOnWhite = 0.15;

/**
 * How sure a measured paint is, by its expected error: too few steps, or too strong ones, are in that already and do not
 * count again. And why, for the sentence with what would help.
 */
export function howSure(facts: FitFacts): { readonly sure: number; readonly why: SureWhy } {
  const { loads, thinnestShare, mixError, misfit, hidingSeen, uneven, isWhite } = facts;
  const sure = 1 / (1 + (mixError / halfSureError) ** 2);
  if (isWhite && !hidingSeen)
    return { sure: Math.min(sure, whiteOnWhite), why: { why: 'white-on-white' } };
  if (misfit > poorMisfit) return { sure: Math.min(sure, disagreeing), why: { why: 'disagree' } };
  if (thinnestShare > heavyShare && sure < quiteSure) return { sure, why: { why: 'only-strong' } };
  if (uneven) return { sure, why: { why: 'uneven' } };
  const steps = loads.length;
  if (steps < 4) return { sure, why: { why: 'few-steps', steps } };
  return { sure, why: { why: hidingSeen ? 'all-agree' : 'hiding-unseen', steps } };
}
