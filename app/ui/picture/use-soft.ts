import { useEffect, useMemo, useState } from 'preact/hooks';
import { decidedEdges } from '../../core/decisions/decided-reading.ts';
import { standingDecisions } from '../../core/decisions/standing-decisions.ts';
import type { SoftBlend } from '../../core/raster/paint-slots.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import type { Edge } from '../../core/reading/edges/edge.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';

/** A picture whose edges are to be drawn soft; the same object as long as nothing of it changes. */
interface SoftPicture {
  readonly slotMap: Uint8Array;
  readonly size: PixelSize;
  readonly edges: readonly Edge[];
}

/**
 * How colours run together at the soft edges of a picture; null until it is worked out, or where it can't be.
 * While its edges are worked out anew the ones before are shown.
 */
export function useSoft(calls: PictureCalls, picture: SoftPicture | null): SoftBlend | null {
  const [found, setFound] = useState<{ picture: SoftPicture; blend: SoftBlend } | null>(null);
  useEffect(() => {
    if (!picture) return;
    const controller = new AbortController();
    const { slotMap, size, edges } = picture;
    calls.softBlend(controller.signal, slotMap, size, edges).then(
      (blend) => setFound({ picture, blend }),
      () => undefined, // the sheet is shown with crisp edges
    );
    return () => controller.abort();
  }, [calls, picture]);
  return found && found.picture.slotMap === picture?.slotMap ? found.blend : null;
}

/**
 * The picture seen with its edges as she decided them: the same object as long as she decides nothing about edges,
 * as working their softness out takes long.
 */
export function useStudyPicture(
  studio: Pick<Studio, 'painting' | 'seen'>,
  seen: OpenedReading,
): SoftPicture {
  const decided = standingDecisions(studio.painting.value?.decisions ?? [], 'edge');
  const about = decided.map(({ id }) => id).join(' ');
  return useMemo(() => {
    const { slotMap, reading } = seen;
    return { slotMap, size: reading.raster, edges: studyEdges(studio) };
  }, [seen, about]);
}

/** The edges of the picture seen, with what she decided about them; none before it is read. */
export function studyEdges({ painting, seen }: Pick<Studio, 'painting' | 'seen'>): readonly Edge[] {
  if (!painting.value || !seen.value) return [];
  const { decisions, reference } = painting.value;
  return decidedEdges(seen.value.reading, decisions, reference).edges ?? [];
}
