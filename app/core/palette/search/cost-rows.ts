/**
 * Costs of all targets in a row, several rows after one another, kept as the bits of their floats: of floats that are
 * not negative the order is that of their bits, and the lesser of two whole numbers takes no branch. Which of two costs
 * is less no processor can foresee, so that branches took four times as long.
 */
export type CostRows = Int32Array;

/** The bits of an infinite float (IEEE 754). */
export const infinite = 0x7f800000;

/** Rows of so many costs in all, each infinite. */
export const farCosts = (count: number): CostRows => new Int32Array(count).fill(infinite);

/** The costs of rows, in the same memory. */
export const costsOf = (rows: CostRows): Float32Array =>
  new Float32Array(rows.buffer, rows.byteOffset, rows.length);

const lesser = (one: number, two: number): number => {
  const less = (one - two) | 0;
  return (two + (less & (less >> 31))) | 0;
};

/** Lowers a row of `count` costs to another one where that is less. */
export function lowerRow(
  rows: CostRows,
  row: number,
  by: CostRows,
  other: number,
  count: number,
): void {
  const [to, from] = [row * count, other * count];
  for (let t = 0; t < count; t++) rows[to + t] = lesser(rows[to + t], by[from + t]);
}

/** Sums rows of costs, each cost by the weight of its target. */
export class RowSums {
  readonly #weights: Float64Array;
  readonly #least: CostRows;
  readonly #costs: Float32Array;

  constructor(weights: readonly number[]) {
    this.#weights = Float64Array.from(weights);
    this.#least = farCosts(weights.length);
    this.#costs = costsOf(this.#least);
  }

  /** `start` and the sum of a row. */
  sum(start: number, rows: CostRows, row: number): number {
    const count = this.#weights.length;
    for (let t = 0; t < count; t++) this.#least[t] = rows[row * count + t];
    return this.sumOf(start, this.#costs);
  }

  /** `start` and the sum of the least of three rows, the first of them by itself. */
  sumOfLeast(
    start: number,
    first: CostRows,
    seconds: CostRows,
    second: number,
    thirds: CostRows,
    third: number,
  ): number {
    const count = this.#weights.length;
    const least = this.#least;
    const [from, to] = [second * count, third * count];
    for (let t = 0; t < count; t++) {
      least[t] = lesser(lesser(first[t], seconds[from + t]), thirds[to + t]);
    }
    return this.sumOf(start, this.#costs);
  }

  /** `start` and the sum of these costs. */
  sumOf(start: number, costs: Float32Array): number {
    const weights = this.#weights;
    let sum = start;
    for (let t = 0; t < weights.length; t++) sum += weights[t] * costs[t];
    return sum;
  }
}
