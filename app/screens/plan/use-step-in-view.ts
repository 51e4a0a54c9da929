import { useSignal } from '@preact/signals';
import type { Step } from '../../model/wash-plan.ts';

interface InView {
  readonly key: string | undefined;
  readonly index: number;
}

/**
 * The step in view, kept by its key: when the plan is made again it is the same step, wherever it stands then.
 * Where it is gone, the one in its place.
 */
export function useStepInView(steps: readonly Step[], first: number) {
  const inView = useSignal<InView>({ key: steps[first]?.key, index: first });
  const at = steps.findIndex(({ key }) => key === inView.value.key);
  const index = at >= 0 ? at : Math.max(0, Math.min(inView.value.index, steps.length - 1));
  return {
    index,
    show: (next: number): void => {
      inView.value = { key: steps[next]?.key, index: next };
    },
  };
}
