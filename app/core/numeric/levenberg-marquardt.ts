/** Least squares about a place: `matrix` is the sum of slope x slope, `right` minus half the cost's slope. */
export interface NormalEquations {
  /** Row by row; only its lower half is read. */
  readonly matrix: Float64Array;
  readonly right: Float64Array;
  readonly cost: number;
}

/** A sum of squares to be made least. Both functions are pure in `place`. */
export interface LeastSquares {
  readonly equationsAt: (place: Float64Array) => NormalEquations;
  /** The same cost without the equations. */
  readonly costAt: (place: Float64Array) => number;
  /** No step changes an unknown by more than this. */
  readonly longestStep: number;
  /** Settled where a step gains, and was expected to gain, less than this share of the cost. */
  readonly tolerance: number;
  readonly mostRounds: number;
}

export interface Settled {
  readonly place: Float64Array;
  readonly cost: number;
  readonly rounds: number;
  /** False where the rounds ran out first. */
  readonly converged: boolean;
}

/**
 * Lets messages in between two stretches of work and throws when the work was cancelled. `part` rises from
 * 0 and stays under 1: how many rounds will be needed is not known.
 */
export type Pause = (part: number) => Promise<void>;

/** After so many rounds `part` says half. */
const usualRounds = 10;

/** Multiplications between two pauses: some 10 ms. */
const stretch = 1e7;

/**
 * Fills row i of Cholesky's lower root left of its diagonal, from the matrix's own values there. Four
 * columns at a time, so that a value of the row is read once for four products: twice as fast.
 */
function fillRow(root: Float64Array, size: number, i: number): void {
  const row = i * size;
  let j = 0;
  for (; j + 3 < i; j += 4) {
    const [one, two, three, four] = [j * size, (j + 1) * size, (j + 2) * size, (j + 3) * size];
    let a = root[row + j];
    let b = root[row + j + 1];
    let c = root[row + j + 2];
    let d = root[row + j + 3];
    for (let k = 0; k < j; k++) {
      const value = root[row + k];
      a -= value * root[one + k];
      b -= value * root[two + k];
      c -= value * root[three + k];
      d -= value * root[four + k];
    }
    a /= root[one + j];
    b = (b - a * root[two + j]) / root[two + j + 1];
    c = (c - a * root[three + j] - b * root[three + j + 1]) / root[three + j + 2];
    d -= a * root[four + j] + b * root[four + j + 1] + c * root[four + j + 2];
    root[row + j] = a;
    root[row + j + 1] = b;
    root[row + j + 2] = c;
    root[row + j + 3] = d / root[four + j + 3];
  }
  for (; j < i; j++) {
    const column = j * size;
    let sum = root[row + j];
    for (let k = 0; k < j; k++) sum -= root[row + k] * root[column + k];
    root[row + j] = sum / root[column + j];
  }
}

/**
 * The step of the damped equations by Cholesky's method, with pauses, as a thousand unknowns take a good
 * part of a second; null where the matrix is not positive.
 */
async function dampedStep(
  { matrix, right }: NormalEquations,
  damping: number,
  pause: () => Promise<void>,
): Promise<Float64Array | null> {
  const size = right.length;
  const root = Float64Array.from(matrix);
  let work = 0;
  for (let i = 0; i < size; i++) {
    fillRow(root, size, i);
    let rest = root[i * size + i] * (1 + damping);
    for (let k = 0; k < i; k++) rest -= root[i * size + k] ** 2;
    if (!(rest > 0)) return null;
    root[i * size + i] = Math.sqrt(rest);
    work += (i * i) / 2;
    if (work < stretch) continue;
    work = 0;
    await pause();
  }
  const step = Float64Array.from(right);
  for (let i = 0; i < size; i++) {
    let sum = step[i];
    for (let k = 0; k < i; k++) sum -= root[i * size + k] * step[k];
    step[i] = sum / root[i * size + i];
  }
  for (let i = size - 1; i >= 0; i--) {
    step[i] = step[i] / root[i * size + i];
    for (let k = 0; k < i; k++) step[k] = step[k] - root[i * size + k] * step[i];
  }
  return step;
}

/** What the equations expect a damped step, shortened to `share`, to gain. */
function expectedGain(
  { matrix, right }: NormalEquations,
  step: Float64Array,
  damping: number,
  share: number,
): number {
  const size = right.length;
  let along = 0;
  let damped = 0;
  for (let i = 0; i < size; i++) {
    along += right[i] * step[i];
    damped += damping * matrix[i * size + i] * step[i] * step[i];
  }
  // The step solves (H + damping diag H) step = right, so step H step = along - damped.
  return 2 * share * along - share * share * (along - damped);
}

const firstDamping = 1e-3;
/** A step damped more than this is too short to tell whether there is more to gain. */
const lightDamping = 0.1;
const leastDamping = 1e-9;
/** Damped more than this a step is so short that its gain is lost in rounding. */
const mostDamping = 1e12;

/**
 * The least cost near `start`. Levenberg (1944), Quart. Appl. Math. 2, 164-168; Marquardt (1963), J. SIAM
 * 11, 431-441 (damping by the diagonal); damping moved as Madsen, Nielsen, Tingleff (2004), Methods for
 * non-linear least squares problems, 2nd ed., Technical University of Denmark, p. 26 f., have it.
 * Deterministic. It has converged where the last step, lightly damped, gained and was expected to gain less
 * than `tolerance` of the cost, or where no step however short gains anything.
 */
export async function minimiseSquares(
  start: Float64Array,
  problem: LeastSquares,
  checkpoint: Pause,
): Promise<Settled> {
  const { equationsAt, costAt, longestStep, tolerance, mostRounds } = problem;
  let place = Float64Array.from(start);
  let equations = equationsAt(place);
  let damping = firstDamping;
  for (let round = 0; round < mostRounds; round++) {
    const pause = () => checkpoint(round / (round + usualRounds));
    let growth = 2;
    for (;;) {
      await pause();
      const step = await dampedStep(equations, damping, pause);
      const longest = step?.reduce((most, value) => Math.max(most, Math.abs(value)), 0) ?? 0;
      const share = Math.min(1, longestStep / longest);
      const next = place.map((value, i) => value + share * (step?.[i] ?? 0));
      await pause();
      const gain = step ? equations.cost - costAt(next) : 0;
      await pause();
      if (step && gain > 0) {
        const expected = expectedGain(equations, step, damping, share);
        const far = tolerance * equations.cost;
        place = next;
        equations = equationsAt(place);
        if (damping < lightDamping && gain < far && expected < far) {
          return { place, cost: equations.cost, rounds: round + 1, converged: true };
        }
        const trust = 1 - (2 * (gain / expected) - 1) ** 3;
        damping = Math.max(leastDamping, damping * Math.max(1 / 3, trust));
        break;
      }
      damping *= growth;
      growth *= 2;
      if (damping > mostDamping) {
        return { place, cost: equations.cost, rounds: round, converged: true };
      }
    }
  }
  return { place, cost: equations.cost, rounds: mostRounds, converged: false };
}
