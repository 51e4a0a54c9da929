import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { MixingChart } from '../../model/mixing-chart.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';

interface FoundChart {
  readonly chart: MixingChart | null;
  /** A sentence for the painter; null while all is well. */
  readonly problem: string | null;
}

/** The chart of a plan's palette; null until it is there. */
export function useChart(calls: PaintCalls, plan: WashPlan | null): FoundChart {
  const now = useSignal<FoundChart>({ chart: null, problem: null });
  useEffect(() => {
    if (!plan) return;
    const leaving = new AbortController();
    calls.mixingChart(leaving.signal, plan.optics).then(
      (chart) => {
        if (!leaving.signal.aborted) now.value = { chart, problem: null };
      },
      () => {
        if (leaving.signal.aborted) return;
        now.value = {
          chart: null,
          problem: 'The chart could not be worked out. Go back to the wash plan and try again.',
        };
      },
    );
    return () => leaving.abort();
  }, [calls, plan]);
  return now.value;
}
