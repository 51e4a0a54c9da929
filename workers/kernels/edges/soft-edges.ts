import { type Edge, edgeLimits } from '../../../app/model/edge.ts';
import { kindOnSheet } from '../../../app/model/kind-on-sheet.ts';
import type { Point } from '../../../app/model/lab.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';

/** An edge to be drawn soft, in px of the picture. */
export interface SoftEdge {
  readonly a: number;
  readonly b: number;
  /** As far as this to either side the two colours mix. */
  readonly reachPx: number;
  /** In px from the upper left. */
  readonly path: readonly Point[];
}

/**
 * Width from 10 to 90 % of an edge that was sharp and is softened with a damp brush, as a share of the
 * long side (own proposal: the middle of 'soften with a damp brush', 0.6 to 2 %).
 */
export const softenedShare = 0.012;

/** An even rise from 0 to 1 spends 0.8 of its way between 10 and 90 %. */
const rampOfWidth = 1 / 0.8;

/** Width a border has on the sheet, 10 to 90 %, as a share of the long side; 0 where it is crisp. */
function softShare(edge: Edge): number {
  switch (kindOnSheet(edge)) {
    case 'soft':
      return edge.wish === 'soften' ? Math.max(edge.widthShare, softenedShare) : edge.widthShare;
    case 'lost': // both sides in one wash, run together; how far can't be measured where little is seen
      return Math.min(edgeLimits.graded, Math.max(edge.widthShare, softenedShare));
    default:
      return 0;
  }
}

/** The edges of a picture that are soft or lost on the sheet, at their measured width. */
export function softEdges(edges: readonly Edge[], { width, height }: PixelSize): SoftEdge[] {
  const longSide = Math.max(width, height);
  return edges.flatMap((edge) => {
    const reachPx = (softShare(edge) * longSide * rampOfWidth) / 2;
    if (reachPx <= 0) return [];
    const { a, b } = edge;
    return [{ a, b, reachPx, path: edge.path.map(([x, y]): Point => [x * width, y * height]) }];
  });
}
