import { standingPlanEdits } from '../../model/standing-plan-edits.ts';
import type { Step } from '../../model/wash-plan.ts';
import type { Studio } from '../../state/studio.ts';
import { Consequence } from '../common/consequence.tsx';
import { WorkLine } from '../common/waiting.tsx';
import styles from './change-step.module.css';

/** While a change is worked out, that it is; then what will happen because of it, or that nothing is against it. */
export function ChangeSaid({ studio, step }: { studio: Studio; step: Step }) {
  const changed = standingPlanEdits(studio.painting.value?.decisions ?? []).length > 0;
  if (studio.work.value || studio.problem.value) {
    return (
      <div class={styles.said}>
        <WorkLine studio={studio} />
      </div>
    );
  }
  return (
    <div class={styles.said} role="status">
      {step.consequence ? (
        <Consequence step={step} />
      ) : (
        changed && <p>Nothing speaks against this step.</p>
      )}
    </div>
  );
}
