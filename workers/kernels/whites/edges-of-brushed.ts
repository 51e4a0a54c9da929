import type { Edge } from '../../../app/model/edge.ts';
import type { Border } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { edgeKind } from '../edges/edge-kinds.ts';

/**
 * Round a white kept by her brush the photo has no edge to measure: bare paper beside paint is as sharp as
 * she paints it, and as strong as the two are planned apart. Between two whites there is none.
 */
export function edgesOfBrushed(
  { edges, borders }: { readonly edges: readonly Edge[]; readonly borders: readonly Border[] },
  slots: readonly Slot[],
): { edges: Edge[]; borders: Border[] } {
  const planned = (a: number, b: number): number | null => {
    const [one, two] = [slots[a], slots[b]];
    if (!one || !two || !(one.byHand || two.byHand)) return null;
    return one.reserve && two.reserve ? 0 : Math.abs(one.target[0] - two.target[0]);
  };
  return {
    edges: edges.map((edge) => {
      const contrast = planned(edge.a, edge.b);
      if (contrast === null) return edge;
      const sharp = { contrast, widthMm: 0, widthShare: 0, graded: false, outOfFocus: false };
      return { ...edge, ...sharp, kind: edgeKind(contrast, 0), heldByColour: false };
    }),
    borders: borders.map((border) => {
      const contrast = planned(border.a, border.b);
      if (contrast === null) return border;
      const lost = edgeKind(contrast, 0) === 'lost' ? 1 : 0;
      return { ...border, contrast, soft: 0, lost };
    }),
  };
}
