import { standingPlanEdits } from '../../model/standing-plan-edits.ts';
import type { Step, WashPlan } from '../../model/wash-plan.ts';
import type { Studio } from '../../state/studio.ts';
import { Consequence } from '../common/consequence.tsx';
import { WorkLine } from '../common/waiting.tsx';
import styles from './change-step.module.css';

interface ChangeSaidProps {
  studio: Studio;
  plan: Pick<WashPlan, 'steps'>;
  step: Step;
}

/**
 * While a change is worked out, that it is; then what will happen because of it, here or else at another step, or
 * that nothing is against it.
 */
export function ChangeSaid({ studio, plan, step }: ChangeSaidProps) {
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
      {step.consequence ? <Consequence step={step} /> : changed && <Elsewhere steps={plan.steps} />}
    </div>
  );
}

/** The first step that a change tells on. */
function Elsewhere({ steps }: { steps: readonly Step[] }) {
  const told = steps.find(({ consequence }) => consequence);
  if (!told) return <p>Nothing speaks against your changes.</p>;
  return (
    <p data-testid="elsewhere">
      <strong>
        Mind step {told.n}, {told.title}:
      </strong>{' '}
      {told.consequence}
    </p>
  );
}
