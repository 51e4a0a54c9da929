import { lastDecision } from '../../model/standing-decisions.ts';
import { standingPlanEdits } from '../../model/standing-plan-edits.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import styles from './change-step.module.css';

interface ChangesSoFarProps {
  studio: Studio;
  plan: WashPlan;
}

/** Taking changes back, and the steps that are left out. */
export function ChangesSoFar({ studio, plan }: ChangesSoFarProps) {
  const decisions = studio.painting.value?.decisions ?? [];
  const last = lastDecision(decisions, 'plan-edit');
  const { length } = standingPlanEdits(decisions);
  return (
    <>
      <div class={styles.actions}>
        <Button
          disabled={!last}
          onClick={() => last && void studio.decide({ kind: 'undo', undoes: last.id })}
        >
          Undo
        </Button>
        <Button
          disabled={length === 0}
          onClick={() => void studio.decide({ kind: 'plan-edit', edit: null })}
        >
          Drop all changes
        </Button>
      </div>
      {plan.leftOut && (
        <>
          <h3>Left out</h3>
          <ul class={styles.leftOut}>
            {plan.leftOut.map(({ key, title }) => (
              <li key={key}>
                <span>{title}</span>
                <Button
                  aria-label={`Put back: ${title}`}
                  onClick={() =>
                    void studio.decide({
                      kind: 'plan-edit',
                      edit: { kind: 'skip', key, skipped: false },
                    })
                  }
                >
                  Put back
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
