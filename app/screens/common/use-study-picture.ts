import { useMemo } from 'preact/hooks';
import { standingDecisions } from '../../model/standing-decisions.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';
import { studyEdges } from './study-edges.ts';
import type { SoftPicture } from './use-soft.ts';

/**
 * The picture seen with its edges as she decided them: the same object as long as she decides nothing about edges,
 * as working their softness out takes long.
 */
export function useStudyPicture(
  studio: Pick<Studio, 'painting' | 'seen'>,
  seen: Seen,
): SoftPicture {
  const decided = standingDecisions(studio.painting.value?.decisions ?? [], 'edge');
  const about = decided.map(({ id }) => id).join(' ');
  return useMemo(() => {
    const { slotMap, reading } = seen;
    return { slotMap, size: reading.raster, edges: studyEdges(studio) };
  }, [seen, about]);
}
