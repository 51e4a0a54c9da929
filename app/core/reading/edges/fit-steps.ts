// Steps blurred by one Gaussian, fitted to a profile by least squares (Levenberg, 'A Method for the
// Solution of Certain Non-Linear Problems in Least Squares', 1944; Marquardt 1963). Model of an edge:
// Elder, Zucker, 'Local Scale Control for Edge Detection and Blur Estimation', 1998.
import { normalTables } from '../../numeric/normal-curve.ts';
import { solveLinear } from '../../numeric/solve.ts';

const mostSteps = 3;
const mostUnknowns = 2 + 2 * mostSteps;
/** Values at most. */
const most = 32;
const mostRounds = 5;
/** Sigma is held between these, samples. */
const leastSigma = 0.2;
const mostSigma = 24;
/** A neighbour's place is known to about two samples, for noise of half an L*. */
const placeHold = (0.5 / 2) ** 2;

/**
 * Unknowns: [base, sigma, rise, place, rise, place ...], the edge looked at first, then its
 * neighbours. Places and sigma in samples, base and rises in L*.
 */
export class StepFit {
  readonly unknowns = new Float64Array(mostUnknowns);
  readonly #tried = new Float64Array(mostUnknowns);
  readonly #held = new Float64Array(mostUnknowns);
  /** Equations at the unknowns taken, and at those on trial. */
  #right = new Float64Array(mostUnknowns);
  #matrix = new Float64Array(mostUnknowns * mostUnknowns);
  #triedRight = new Float64Array(mostUnknowns);
  #triedMatrix = new Float64Array(mostUnknowns * mostUnknowns);
  readonly #damped = new Float64Array(mostUnknowns * mostUnknowns);
  readonly #change = new Float64Array(mostUnknowns);
  /** Slope of the model by every unknown, at every value; and what the model leaves over. */
  readonly #slopes = new Float64Array(mostUnknowns * most);
  readonly #rest = new Float64Array(most);

  get base(): number {
    return this.unknowns[0];
  }
  get sigma(): number {
    return this.unknowns[1];
  }
  get rise(): number {
    return this.unknowns[2];
  }
  get place(): number {
    return this.unknowns[3];
  }

  /** Better unknowns for values[from .. to - 1], starting from those set. */
  improve(values: Float64Array, from: number, to: number, steps: number): void {
    const size = 2 + 2 * steps;
    const { unknowns } = this;
    this.#held.set(unknowns);
    let damping = 1e-3;
    let cost = this.#sumUp(values, from, to, steps, unknowns);
    this.#take();
    for (let round = 0; round < mostRounds; round++) {
      this.#damped.set(this.#matrix);
      for (let i = 0; i < size; i++) {
        const diagonal = i * size + i;
        this.#damped[diagonal] = this.#damped[diagonal] * (1 + damping) + 1e-9;
      }
      this.#change.set(this.#right);
      if (!solveLinear(this.#damped, this.#change, size)) return;
      for (let i = 0; i < size; i++) {
        this.#tried[i] = unknowns[i] + this.#change[i];
      }
      this.#tried[1] = Math.min(mostSigma, Math.max(leastSigma, this.#tried[1]));
      const tried = this.#sumUp(values, from, to, steps, this.#tried);
      if (tried <= cost) {
        unknowns.set(this.#tried);
        this.#take();
        const isDone = cost - tried < 1e-2 * cost + 1e-9;
        cost = tried;
        damping /= 8;
        if (isDone) return;
      } else {
        damping *= 32;
        if (damping > 1e3) return;
      }
    }
  }

  #take(): void {
    [this.#right, this.#triedRight] = [this.#triedRight, this.#right];
    [this.#matrix, this.#triedMatrix] = [this.#triedMatrix, this.#matrix];
  }

  /** Cost at `at`, and there the normal equations for the next change. */
  #sumUp(
    values: Float64Array,
    from: number,
    to: number,
    steps: number,
    unknowns: Float64Array,
  ): number {
    const right = this.#triedRight;
    const matrix = this.#triedMatrix;
    if (steps === 1) return oneStepEquations(values, from, to, unknowns, matrix, right);
    const size = 2 + 2 * steps;
    const count = to - from;
    const slopes = this.#slopes;
    const rest = this.#rest;
    const base = unknowns[0];
    const { sums, densities, perUnit, reach } = normalTables;
    const perSigma = 1 / unknowns[1];
    for (let i = 0; i < count; i++) {
      slopes[i] = 1;
      slopes[most + i] = 0;
      rest[i] = values[from + i] - base;
    }
    for (let n = 2; n < size; n += 2) {
      const rise = unknowns[n];
      const fallPerDensity = -rise * perSigma;
      const sumsAt = n * most;
      const fallsAt = sumsAt + most;
      let z = (from - unknowns[n + 1]) * perSigma;
      for (let i = 0; i < count; i++, z += perSigma) {
        let sum = z < 0 ? 0 : 1;
        let fall = 0;
        if (z > -reach && z < reach) {
          const place = (z + reach) * perUnit;
          const entry = place | 0;
          const part = place - entry;
          const low = sums[entry];
          sum = low + part * (sums[entry + 1] - low);
          const density = densities[entry];
          fall = fallPerDensity * (density + part * (densities[entry + 1] - density));
        }
        slopes[sumsAt + i] = sum;
        slopes[fallsAt + i] = fall;
        slopes[most + i] = slopes[most + i] + fall * z;
        rest[i] = rest[i] - rise * sum;
      }
    }
    let cost = 0;
    for (let i = 0; i < count; i++) cost += rest[i] ** 2;
    for (let row = 0; row < size; row++) {
      const own = row * most;
      let sum = 0;
      for (let i = 0; i < count; i++) sum += slopes[own + i] * rest[i];
      right[row] = sum;
      // Two columns at a time do not wait for each other's sums; an odd last one is taken twice.
      for (let column = 0; column <= row; column += 2) {
        const one = column * most;
        const next = Math.min(row, column + 1);
        const two = next * most;
        let oneProduct = 0;
        let twoProduct = 0;
        for (let i = 0; i < count; i++) {
          const slope = slopes[own + i];
          oneProduct += slope * slopes[one + i];
          twoProduct += slope * slopes[two + i];
        }
        matrix[row * size + column] = oneProduct;
        matrix[row * size + next] = twoProduct;
      }
    }
    return cost + this.#holdNeighbours(size, unknowns);
  }

  /** Neighbours' places cost something to move. */
  #holdNeighbours(size: number, unknowns: Float64Array): number {
    let cost = 0;
    for (let n = 5; n < size; n += 2) {
      const away = unknowns[n] - this.#held[n];
      cost += placeHold * away * away;
      this.#triedRight[n] = this.#triedRight[n] - placeHold * away;
      const cell = n * size + n;
      this.#triedMatrix[cell] = this.#triedMatrix[cell] + placeHold;
    }
    return cost;
  }
}

// The normal equations of one blurred step, the case met most: `StepFit`'s own sums, each added up in the same
// order, in one run over the values instead of fifteen.
const { sums, densities, perUnit, reach } = normalTables;

/**
 * For values[from .. to - 1] and the unknowns [base, sigma, rise, place]: fills the lower half of the 4 x 4 `matrix`
 * and `right`, and answers the sum of the squares left over.
 */
function oneStepEquations(
  values: Float64Array,
  from: number,
  to: number,
  unknowns: Float64Array,
  matrix: Float64Array,
  right: Float64Array,
): number {
  const base = unknowns[0];
  const perSigma = 1 / unknowns[1];
  const rise = unknowns[2];
  const fallPerDensity = -rise * perSigma;
  let z = (from - unknowns[3]) * perSigma;
  let [cost, right0, right1, right2, right3] = [0, 0, 0, 0, 0];
  let [m10, m11, m20, m21, m22] = [0, 0, 0, 0, 0];
  let [m30, m31, m32, m33] = [0, 0, 0, 0];
  for (let i = from; i < to; i++, z += perSigma) {
    let sum = z < 0 ? 0 : 1;
    let fall = 0;
    if (z > -reach && z < reach) {
      const place = (z + reach) * perUnit;
      const entry = place | 0;
      const part = place - entry;
      const low = sums[entry];
      sum = low + part * (sums[entry + 1] - low);
      const density = densities[entry];
      fall = fallPerDensity * (density + part * (densities[entry + 1] - density));
    }
    const spread = fall * z;
    const rest = values[i] - base - rise * sum;
    cost += rest * rest;
    right0 += rest;
    right1 += spread * rest;
    right2 += sum * rest;
    right3 += fall * rest;
    m10 += spread;
    m11 += spread * spread;
    m20 += sum;
    m21 += sum * spread;
    m22 += sum * sum;
    m30 += fall;
    m31 += fall * spread;
    m32 += fall * sum;
    m33 += fall * fall;
  }
  right[0] = right0;
  right[1] = right1;
  right[2] = right2;
  right[3] = right3;
  matrix[0] = Math.max(0, to - from);
  matrix[4] = m10;
  matrix[5] = m11;
  matrix[8] = m20;
  matrix[9] = m21;
  matrix[10] = m22;
  matrix[12] = m30;
  matrix[13] = m31;
  matrix[14] = m32;
  matrix[15] = m33;
  return cost;
}
