import { type Edge, type EdgeKind, edgeKinds } from './edge.ts';

/** All edges of one kind: how many stretches, how long together (mm), and their share of all length, 0..1. */
export interface EdgeShare {
  readonly kind: EdgeKind;
  readonly count: number;
  readonly lengthMm: number;
  readonly share: number;
}

/** Shares by length, one row for each of the four kinds, also where there are none. */
export function edgeShares(
  edges: readonly Pick<Edge, 'kind' | 'lengthMm'>[],
): readonly EdgeShare[] {
  const all = edges.reduce((sum, edge) => sum + edge.lengthMm, 0);
  return edgeKinds.map((kind) => {
    const own = edges.filter((edge) => edge.kind === kind);
    const lengthMm = own.reduce((sum, edge) => sum + edge.lengthMm, 0);
    return { kind, count: own.length, lengthMm, share: all > 0 ? lengthMm / all : 0 };
  });
}
