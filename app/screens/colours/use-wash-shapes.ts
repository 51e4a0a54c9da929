import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { WashShapes } from '../../../workers/analysis-api.ts';
import type { MassSizes, MassWash } from '../../model/masses.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';

/** The shapes of one wash, and the reading they were found in. */
export interface FoundShapes {
  readonly of: Seen;
  readonly shapes: WashShapes;
}

/** Shapes of one wash of what is seen; the last ones stay until the next are found. */
export function useWashShapes(
  studio: Studio,
  wash: MassWash | null,
  sizes: MassSizes,
): FoundShapes | null {
  const found = useSignal<FoundShapes | null>(null);
  const seen = studio.seen.value;
  const size = wash && sizes[wash];
  useEffect(() => {
    if (!seen || !wash) return;
    const leaving = new AbortController();
    studio.washShapes(leaving.signal, wash, sizes).then(
      (shapes) => {
        if (!leaving.signal.aborted) found.value = shapes && { of: seen, shapes };
      },
      () => {
        // The picture of the shapes stays away; what went wrong in the worker the studio says.
        if (!leaving.signal.aborted) found.value = null;
      },
    );
    return () => leaving.abort();
  }, [studio, seen, wash, size]);
  return found.value;
}
