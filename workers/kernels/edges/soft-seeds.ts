import type { SoftEdge } from './soft-edges.ts';

/** Places along soft edges, about one a px: what a pixel measures its distance to. All in px. */
export interface SoftSeeds {
  readonly count: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** 1 over the square of the edge's reach. */
  readonly perReach2: Float32Array;
  /** Index of the edge a place belongs to. */
  readonly edges: Uint32Array;
}

const stepsBetween = (
  [fromX, fromY]: readonly [number, number],
  [toX, toY]: readonly [number, number],
): number => Math.max(1, Math.ceil(Math.hypot(toX - fromX, toY - fromY)));

export function softSeeds(edges: readonly SoftEdge[]): SoftSeeds {
  let room = 0;
  for (const { path } of edges)
    path.forEach((to, n) => {
      room += n === 0 ? 1 : stepsBetween(path[n - 1] ?? to, to);
    });
  const x = new Float32Array(room);
  const y = new Float32Array(room);
  const perReach2 = new Float32Array(room);
  const indices = new Uint32Array(room);
  let count = 0;
  edges.forEach(({ path, reachPx }, index) => {
    path.forEach((to, n) => {
      const from = path[n - 1] ?? to;
      const steps = n === 0 ? 1 : stepsBetween(from, to);
      for (let k = 1; k <= steps; k++) {
        x[count] = from[0] + (k / steps) * (to[0] - from[0]);
        y[count] = from[1] + (k / steps) * (to[1] - from[1]);
        perReach2[count] = 1 / (reachPx * reachPx);
        indices[count++] = index;
      }
    });
  });
  return { count, x, y, perReach2, edges: indices };
}
