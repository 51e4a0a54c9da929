import { describe, expect, it } from 'vitest';
import {
  type LeastSquares,
  minimiseSquares,
} from '../../../../app/core/numeric/levenberg-marquardt.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const noPause = async (): Promise<void> => {};

/** Least squares from misfits and their slopes, row by row of misfits. */
function squares(
  misfitsAt: (place: Float64Array) => number[],
  slopesAt: (place: Float64Array) => number[][],
): LeastSquares {
  const costAt = (place: Float64Array): number =>
    misfitsAt(place).reduce((sum, misfit) => sum + misfit * misfit, 0);
  return {
    costAt,
    equationsAt(place) {
      const size = place.length;
      const matrix = new Float64Array(size * size);
      const right = new Float64Array(size);
      const slopes = slopesAt(place);
      for (const [n, misfit] of misfitsAt(place).entries()) {
        const row = slopes[n] as number[];
        for (let i = 0; i < size; i++) {
          right[i] = (right[i] as number) - (row[i] as number) * misfit;
          for (let j = 0; j <= i; j++) {
            const place = i * size + j;
            matrix[place] = (matrix[place] as number) + (row[i] as number) * (row[j] as number);
          }
        }
      }
      return { matrix, right, cost: costAt(place) };
    },
    longestStep: 10,
    tolerance: 1e-12,
    mostRounds: 200,
  };
}

const values = (place: Float64Array, n: number): number => place[n] as number;

// Moré, Garbow, Hillstrom (1981), Testing unconstrained optimization software, ACM TOMS 7, 17-41.
const rosenbrock = squares(
  (x) => [10 * (values(x, 1) - values(x, 0) ** 2), 1 - values(x, 0)],
  (x) => [
    [-20 * values(x, 0), 10],
    [-1, 0],
  ],
);
const powellSingular = squares(
  (x) => [
    values(x, 0) + 10 * values(x, 1),
    Math.sqrt(5) * (values(x, 2) - values(x, 3)),
    (values(x, 1) - 2 * values(x, 2)) ** 2,
    Math.sqrt(10) * (values(x, 0) - values(x, 3)) ** 2,
  ],
  (x) => {
    const b = 2 * (values(x, 1) - 2 * values(x, 2));
    const d = 2 * Math.sqrt(10) * (values(x, 0) - values(x, 3));
    return [
      [1, 10, 0, 0],
      [0, 0, Math.sqrt(5), -Math.sqrt(5)],
      [0, b, -2 * b, 0],
      [d, 0, 0, -d],
    ];
  },
);
const freudensteinRoth = squares(
  (x) => [
    -13 + values(x, 0) + ((5 - values(x, 1)) * values(x, 1) - 2) * values(x, 1),
    -29 + values(x, 0) + ((values(x, 1) + 1) * values(x, 1) - 14) * values(x, 1),
  ],
  (x) => [
    [1, 10 * values(x, 1) - 3 * values(x, 1) ** 2 - 2],
    [1, 3 * values(x, 1) ** 2 + 2 * values(x, 1) - 14],
  ],
);

describe('Levenberg and Marquardt', () => {
  it('finds the least of the curved valley of Rosenbrock from its usual start', async () => {
    const { place, cost, converged } = await minimiseSquares(
      Float64Array.of(-1.2, 1),
      rosenbrock,
      noPause,
    );
    expect(converged).toBe(true);
    expect(cost).toBeLessThan(1e-18);
    expect([...place]).toEqual([expect.closeTo(1, 9), expect.closeTo(1, 9)]);
  });

  it('nears the least of the singular problem of Powell', async () => {
    const { cost } = await minimiseSquares(Float64Array.of(3, -1, 0, 1), powellSingular, noPause);
    expect(cost).toBeLessThan(1e-12);
  });

  it('stops at the local least 48.9842 of Freudenstein and Roth, and says it converged', async () => {
    const { cost, converged } = await minimiseSquares(
      Float64Array.of(0.5, -2),
      freudensteinRoth,
      noPause,
    );
    expect(converged).toBe(true);
    expect(cost).toBeCloseTo(48.98425, 4);
  });

  it('solves straight problems of 1 to 30 unknowns, whatever their number is by four', async () => {
    const random = seeded(3);
    for (let size = 1; size <= 30; size++) {
      const rows = Array.from({ length: size + 5 }, () =>
        Array.from({ length: size }, () => random() - 0.5),
      );
      const truth = Array.from({ length: size }, () => random());
      const off = (x: ArrayLike<number>, row: number[]): number =>
        row.reduce((sum, slope, i) => sum + slope * ((x[i] as number) - (truth[i] as number)), 0);
      const straight = squares(
        (x) => rows.map((row) => off(x, row)),
        () => rows,
      );
      const { place } = await minimiseSquares(new Float64Array(size), straight, noPause);
      for (const [i, value] of truth.entries()) expect(place[i]).toBeCloseTo(value, 6);
    }
  });

  it('says so when its rounds run out, and the cost never rises with more of them', async () => {
    let before = Number.POSITIVE_INFINITY;
    for (const mostRounds of [0, 1, 2, 4, 8]) {
      const { cost, converged, rounds } = await minimiseSquares(
        Float64Array.of(-1.2, 1),
        { ...rosenbrock, mostRounds },
        noPause,
      );
      expect({ converged, rounds }).toEqual({ converged: false, rounds: mostRounds });
      expect(cost).toBeLessThanOrEqual(before);
      before = cost;
    }
  });

  it('ends with the first step that gains, and was to gain, less than the tolerance of the cost', async () => {
    // A line through points that lie beside it: the first step all but ends there, the second gains next to nothing.
    const points = [0, 1, 3, 4, 7, 9].map(
      (x, n) => [x, 2 + 3 * x + (n % 2 === 0 ? 1 : -1)] as const,
    );
    const line = squares(
      (at) => points.map(([x, y]) => values(at, 0) + values(at, 1) * x - y),
      () => points.map(([x]) => [1, x]),
    );
    const ended = await minimiseSquares(new Float64Array(2), { ...line, tolerance: 1e-3 }, noPause);
    expect(ended).toMatchObject({ converged: true, rounds: 2 });
  });

  it('is left where it starts when that is the least', async () => {
    const { place, converged } = await minimiseSquares(Float64Array.of(1, 1), rosenbrock, noPause);
    expect({ place: [...place], converged }).toEqual({ place: [1, 1], converged: true });
  });

  it('ends with what the pause throws, and its progress rises and stays under 1', async () => {
    const parts: number[] = [];
    const stopped = minimiseSquares(Float64Array.of(-1.2, 1), rosenbrock, async (part) => {
      parts.push(part);
      if (parts.length === 6) throw new Error('cancelled');
    });
    await expect(stopped).rejects.toThrow('cancelled');
    expect(parts.length).toBe(6);
    expect(parts).toEqual(parts.toSorted((a, b) => a - b));
    expect(Math.max(...parts)).toBeLessThan(1);
  });
});
