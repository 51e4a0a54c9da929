import type { Lab } from '../../colour/lab.ts';
import { solveLinear } from '../../numeric/solve.ts';
import { capitalize, spellCount } from '../../words/numbers.ts';
import { type JointProblem, jointSquares } from './fit-jointly.ts';
import type { JointPatch } from './joint-patch.ts';

/**
 * How uncertain the colours of other patches are after a fit that ended at `place`: CIEDE2000, root of the mean
 * square. The inverse of the fit's normal equations is the covariance of what was found (Laplace's approximation);
 * what is wrong with all patches together comes on top: `faulty` are their colours with one such fault each, one
 * standard deviation of it. Infinity where the patches left something open.
 */
export function expectedError(
  problem: JointProblem,
  place: Float64Array,
  faulty: readonly (readonly Lab[])[],
  probes: readonly JointPatch[],
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
  const along = (row: Float64Array, other: Float64Array | null): number =>
    other ? row.reduce((sum, slope, i) => sum + slope * other[i], 0) : Infinity;
  let sum = 0;
  for (const probe of probes) {
    for (const row of squares.slopesAt(place, probe)) {
      sum += along(row, solved(row));
      for (const move of moves) sum += along(row, move) ** 2;
    }
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
/** So much of the misfit of the patches is left in the mixes (own). */
const misfitShare = 0.6;
/** Steps that fit worse than this (CIEDE2000) were mixed up, shone, or dried unevenly (own). */
const poorMisfit = 5;

/** The sentence on how sure a measured paint is, with what would help. */
export function howSure(facts: FitFacts): { readonly sure: number; readonly why: string } {
  const { loads, thinnestShare, mixError, misfit, hidingSeen, uneven, isWhite } = facts;
  const open = Math.hypot(mixError, misfitShare * misfit);
  const even = 1 / (1 + (open / halfSureError) ** 2);
  if (isWhite && !hidingSeen) {
    return {
      sure: Math.min(even, 0.15),
      why: 'A white on white paper shows next to nothing. Paint its steps across a black line as well, and measure again.',
    };
  }
  if (misfit > poorMisfit) {
    return {
      sure: 0.55 * even,
      why: 'The steps do not agree with each other. See that each frame lies on its own patch and carries the right name; a patch that shines or is still damp misleads.',
    };
  }
  if (thinnestShare > heavyShare) {
    return {
      sure: 0.75 * even,
      why: 'Only strong steps: how far it colours, and whether it hides what is under it or lets it shine through, can not be told apart. Add thinner steps, each twice as thin, until the paper shines through; a step over a black line helps too.',
    };
  }
  if (uneven) {
    return {
      sure: 0.8 * even,
      why: 'Not every frame lies on one even colour. Once each does, measure again.',
    };
  }
  if (loads.length < 4) {
    return {
      sure: 0.85 * even,
      why: `With only ${spellCount(loads.length)} steps mixes may come out a little different. Five, each twice as thin, would tell more.`,
    };
  }
  if (!hidingSeen) {
    return {
      sure: even,
      why: `${capitalize(spellCount(loads.length))} steps that agree: by itself it should come out close. How it mixes and hides is less sure: a step painted over a black line would tell.`,
    };
  }
  return {
    sure: even,
    why: `${capitalize(spellCount(loads.length))} steps and what lies over the black line agree: alone and in mixes it should come out close.`,
  };
}
