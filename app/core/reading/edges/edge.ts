import type { Point } from '../../colour/lab.ts';

/** What becomes of an edge on the sheet, whatever it is in the photo. */
export type EdgeWish = 'keep' | 'soften' | 'lose' | 'sharpen';

export const edgeWishes: readonly EdgeWish[] = ['keep', 'soften', 'lose', 'sharpen'];

/**
 * hard: plain and sharp; soft: plain, over some width; found: slight but sharp; lost: not to be seen.
 * Limits as in `edgeLimits`.
 */
export type EdgeKind = 'hard' | 'soft' | 'found' | 'lost';

const edgeKinds: readonly EdgeKind[] = ['hard', 'soft', 'found', 'lost'];

/** A stretch of a contour between two slots along which the kind stays the same. */
export interface Edge {
  /** Indices into `Reading.slots`, a < b. */
  readonly a: number;
  readonly b: number;
  readonly kind: EdgeKind;
  /** Wider than 6 % of the long side: a graded wash rather than an edge. */
  readonly graded: boolean;
  /** Lost in value, but the colours on its sides are over 15 apart in a* and b*. */
  readonly heldByColour: boolean;
  /** In a part of the photo where most edges are blurred: the lens may have made it soft. */
  readonly outOfFocus: boolean;
  /** Difference of lightness between the sides, L*, 0 or more; on the unsimplified picture. */
  readonly contrast: number;
  /** Way from 10 % to 90 % of that difference, the photo's own blur taken off: mm on the sheet ... */
  readonly widthMm: number;
  /** ... and as a share of the picture's long side, 0..1. */
  readonly widthShare: number;
  readonly lengthMm: number;
  /** Its course as a line of straight pieces; 0..1 from the left and from the top of the raster. */
  readonly path: readonly Point[];
  /** What she wants of it on the sheet; left out: as measured. */
  readonly wish?: EdgeWish;
}

/**
 * Limits between the kinds (own, after the two axes of the trade, sharp or soft, seen or
 * lost; no source gives numbers). Contrast and hysteresis in L*, widths as shares of the long side.
 */
export const edgeLimits = {
  /** Less contrast than this is lost ... */
  lost: 4,
  /** ... and from this on it is plain. */
  plain: 10,
  /** Contrast counts as on the other side of a limit only this far beyond it. */
  hysteresis: 1,
  /** Rises less than this per 1 % of the long side, L*: lost. */
  lostSlope: 1,
  soft: 0.006,
  graded: 0.06,
  /** Difference in a*, b* that holds an edge lost in value. */
  colour: 15,
} as const;

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

/** All edges of one kind: how many stretches, how long together (mm), and their share of all length, 0..1. */
interface EdgeShare {
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

/** More of all edges, by length, hard than this: a cut-out (common practice; the figure: own). */
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
