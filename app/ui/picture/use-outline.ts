import { useEffect, useState } from 'preact/hooks';
import { decidedReading } from '../../core/decisions/decided-reading.ts';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import type { Outline } from '../../core/outline/outline.ts';
import { massSizes } from '../../core/reading/masses.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';

/** The drawing of the picture seen, as she decided; null until it is worked out, or while nobody `wants` it. */
export function useOutline(
  { painting, seen }: Pick<Studio, 'painting' | 'seen'>,
  calls: PictureCalls,
  wants = true,
): Outline | null {
  const [outline, setOutline] = useState<Outline | null>(null);
  const current = painting.value;
  const opened = seen.value;
  useEffect(() => {
    if (!wants || !current || !opened) return;
    const controller = new AbortController();
    const sizes = lastDecision(current.decisions, 'smallest')?.sizes ?? massSizes;
    calls
      .outline(controller.signal, decidedReading(opened.reading, current), opened.slotMap, sizes)
      .then(
        setOutline,
        () => undefined, // stays as it waits; the screen can be opened again
      );
    return () => controller.abort();
  }, [wants, current?.decisions, opened]);
  return outline;
}
