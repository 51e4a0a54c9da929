import { useEffect, useState } from 'preact/hooks';
import { decidedReading } from '../../model/decided-reading.ts';
import { massSizes } from '../../model/masses.ts';
import type { Outline } from '../../model/outline.ts';
import { lastDecision } from '../../model/standing-decisions.ts';
import type { PictureCalls } from '../../state/picture-calls.ts';
import type { Studio } from '../../state/studio.ts';

/** The drawing of the picture seen, as she decided; null until it is worked out. */
export function useOutline(
  { painting, seen }: Pick<Studio, 'painting' | 'seen'>,
  calls: PictureCalls,
): Outline | null {
  const [outline, setOutline] = useState<Outline | null>(null);
  const of = painting.value;
  const now = seen.value;
  useEffect(() => {
    if (!of || !now) return;
    const leaving = new AbortController();
    const sizes = lastDecision(of.decisions, 'smallest')?.sizes ?? massSizes;
    calls.outline(leaving.signal, decidedReading(now.reading, of), now.slotMap, sizes).then(
      setOutline,
      () => undefined, // stays as it waits; the page can be opened again
    );
    return () => leaving.abort();
  }, [of?.decisions, now]);
  return outline;
}
