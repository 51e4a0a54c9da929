import { type SoftBlend, softBlend } from '../../drawing/soft-blend.ts';
import { softEdges } from '../../drawing/soft-edges.ts';
import type { Edge } from '../../model/edge.ts';
import type { PixelSize } from '../../model/reference.ts';

/** How colours run together at the soft edges of a picture: worked out when first asked, then kept. */
export function softOf(
  slotMap: Uint8Array,
  size: PixelSize,
  edges: readonly Edge[],
): () => SoftBlend {
  let blend: SoftBlend | null = null;
  return () => {
    blend ??= softBlend(slotMap, size, softEdges(edges, size));
    return blend;
  };
}
