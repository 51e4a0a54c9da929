import type { EdgeWish } from './edge-wishes.ts';
import type { Point } from './lab.ts';

/**
 * hard: plain and sharp; soft: plain, over some width; found: slight but sharp; lost: not to be seen.
 * Limits as in `edgeLimits`.
 */
export type EdgeKind = 'hard' | 'soft' | 'found' | 'lost';

export const edgeKinds: readonly EdgeKind[] = ['hard', 'soft', 'found', 'lost'];

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
 * Limits between the kinds (own proposal after the two axes of the trade, sharp or soft, seen or
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
