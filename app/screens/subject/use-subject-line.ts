import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { SubjectResult } from '../../../workers/api.ts';
import { subjectStrokes } from '../../core/decisions/subject-strokes.ts';
import { describeFault } from '../../state/describe-fault.ts';
import type { Studio } from '../../state/painting/studio.ts';

/** The last line found; what was found before stays in sight while a newer one is looked for. */
export interface SubjectLine {
  readonly found: SubjectResult | null;
  readonly looking: boolean;
  /** True where there are strokes, but nothing of the picture in them. */
  readonly empty: boolean;
  readonly problem: string | null;
}

export function useSubjectLine(studio: Studio): ReadonlySignal<SubjectLine> {
  const line = useSignal<SubjectLine>({ found: null, looking: true, empty: false, problem: null });
  const painting = studio.painting.value;
  const seen = studio.seen.value;
  const strokes = painting ? subjectStrokes(painting.decisions, painting.reference) : [];
  const key = JSON.stringify(strokes);
  useEffect(() => {
    if (!seen) return;
    const controller = new AbortController();
    line.value = { ...line.value, looking: true, problem: null };
    studio.subjectLine(controller.signal, strokes).then(
      (found) => {
        if (controller.signal.aborted) return;
        const empty = !found && strokes.length > 0;
        line.value = { found, looking: false, empty, problem: null };
      },
      (fault: unknown) => {
        if (controller.signal.aborted) return;
        line.value = { ...line.value, looking: false, problem: describeFault(fault) };
      },
    );
    return () => controller.abort();
  }, [studio, seen, key]);
  return line;
}
