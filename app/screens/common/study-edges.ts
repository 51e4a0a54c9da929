import { decidedEdges } from '../../model/decided-edges.ts';
import type { Edge } from '../../model/edge.ts';
import type { Studio } from '../../state/studio.ts';

/** The edges of the picture seen, with what she decided about them; none before it is read. */
export function studyEdges({ painting, seen }: Pick<Studio, 'painting' | 'seen'>): readonly Edge[] {
  if (!painting.value || !seen.value) return [];
  const { decisions, reference } = painting.value;
  return decidedEdges(seen.value.reading, decisions, reference).edges ?? [];
}
