import type { Point } from '../../model/lab.ts';

/** A line round something smaller than this, as a share of the picture's sides, was a slip of the finger. */
const smallestAcross = 0.03;

export const isSlip = (path: readonly Point[]): boolean =>
  ([0, 1] as const).some((axis) => {
    const places = path.map((point) => point[axis]);
    return Math.max(...places) - Math.min(...places) < smallestAcross;
  });
