import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { LaidMix, MixNeighbours } from '../../model/mix-neighbour.ts';
import type { Paint } from '../../model/paint.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';

export interface FoundNeighbours {
  readonly found: MixNeighbours | null;
  /** A sentence for the painter; null while all is well. */
  readonly problem: string | null;
}

/** The mixes next to one, asked for once; the next of the caller's mixes wants a new key. */
export function useNeighbours(
  calls: PaintCalls,
  optics: readonly Paint[],
  below: readonly LaidMix[],
  { parts, load }: LaidMix,
): FoundNeighbours {
  const now = useSignal<FoundNeighbours>({ found: null, problem: null });
  useEffect(() => {
    const leaving = new AbortController();
    calls.mixNeighbours(leaving.signal, optics, below, { parts, load }).then(
      (found) => {
        if (!leaving.signal.aborted) now.value = { found, problem: null };
      },
      () => {
        if (leaving.signal.aborted) return;
        const problem =
          'The mixes next to it could not be worked out. Close this and open it again.';
        now.value = { found: null, problem };
      },
    );
    return () => leaving.abort();
  }, [calls, optics, JSON.stringify([below, parts, load])]);
  return now.value;
}
