import type { Edge } from './edge.ts';
import { edgeShares } from './edge-shares.ts';
import { edgesOnSheet } from './kind-on-sheet.ts';

/** More of all edges, by length, hard than this: a cut-out (common practice; the figure is our own). */
const nearlyAll = 0.9;
/** Fewer edges than this along the sheet's half outline say nothing, as a part of it. */
const someEdges = 0.5;

/** Whether nearly every edge is to be hard on the sheet; lost ones count as relief. */
export function isNearlyAllHard(
  edges: readonly Edge[],
  sheet: { readonly widthMm: number; readonly heightMm: number },
): boolean {
  const lengthMm = edges.reduce((sum, edge) => sum + edge.lengthMm, 0);
  const hard = edgeShares(edgesOnSheet(edges)).find(({ kind }) => kind === 'hard')?.share ?? 0;
  return lengthMm > someEdges * (sheet.widthMm + sheet.heightMm) && hard > nearlyAll;
}
