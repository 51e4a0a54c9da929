import { type Edge, type EdgeKind, edgeLimits } from './edge.ts';

/**
 * What an edge is to be on the sheet: as measured, unless she decided otherwise. Sharpened, it is hard
 * where its sides are plainly apart, else found. Keeping is the measured kind, decided.
 */
export function kindOnSheet({
  kind,
  wish,
  contrast,
}: Pick<Edge, 'kind' | 'wish' | 'contrast'>): EdgeKind {
  switch (wish) {
    case 'soften':
      return 'soft';
    case 'lose':
      return 'lost';
    case 'sharpen':
      return contrast >= edgeLimits.plain ? 'hard' : 'found';
    default: // kept, or not decided
      return kind;
  }
}

/** The same edges by what they are to be, for whoever sums or draws kinds. */
export const edgesOnSheet = (edges: readonly Edge[]): readonly Edge[] =>
  edges.map((edge) => ({ ...edge, kind: kindOnSheet(edge) }));
