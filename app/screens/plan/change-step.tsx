import type { PlanEdit } from '../../core/decisions/plan-edit.ts';
import { standingPlanEdits } from '../../core/decisions/standing-decisions.ts';
import {
  canBeSplit,
  movedEarlier,
  movedLater,
  nextWash,
  standsByItself,
  techniqueChoices,
} from '../../core/plan/edits/possible-edits.ts';
import type { Step, WashPlan } from '../../core/plan/plan.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { words } from '../../core/words/plan/words.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { UndoButtons } from '../../ui/controls/undo-buttons.tsx';
import { Fold } from '../../ui/layout/fold.tsx';
import { WorkLine } from '../../ui/layout/waiting.tsx';
import { Consequence } from '../../ui/mixes/step-parts.tsx';
import { ChangeAdd, ChangeMixes } from './change-mixes.tsx';
import styles from './change-step.module.css';

interface ChangeStepProps {
  studio: Studio;
  plan: WashPlan;
  reading: Reading;
  step: Step;
}

/** Folded under the step: all she can make of it. Every change is worked out at once. */
export function ChangeStep({ studio, plan, reading, step }: ChangeStepProps) {
  const change = (edit: PlanEdit | null): void => {
    if (edit) void studio.decide({ kind: 'plan-edit', edit });
  };
  const { key, kind } = step;
  const earlier = movedEarlier(plan.steps, key);
  const later = movedLater(plan.steps, key);
  const techniques = techniqueChoices(kind, plan.optics);
  return (
    <Fold title="Change this step">
      <ChangesSoFar studio={studio} plan={plan} />
      <p class={styles.which}>
        {step.n}. {words(step.title)}
      </p>
      <ChangeSaid studio={studio} plan={plan} step={step} />
      <div class={styles.actions}>
        <Button onClick={() => change({ kind: 'skip', key, skipped: true })}>Leave out</Button>
        {standsByItself(step) && (
          <>
            <Button disabled={!earlier} onClick={() => change(earlier)}>
              Earlier
            </Button>
            <Button disabled={!later} onClick={() => change(later)}>
              Later
            </Button>
          </>
        )}
        {canBeSplit(plan, step) && (
          <Button onClick={() => change({ kind: 'split', key })}>Split in two</Button>
        )}
        {nextWash(plan, step) && (
          <Button onClick={() => change({ kind: 'merge', key })}>Join with the next</Button>
        )}
      </div>
      {techniques.length > 0 && (
        <>
          <h3>How it is painted</h3>
          <ChoiceRow
            label="How it is painted"
            choices={techniques.map((one) => [one, one] as const)}
            chosen={step.technique}
            wraps
            onChoose={(technique) =>
              technique !== step.technique && change({ kind: 'technique', key, technique })
            }
          />
        </>
      )}
      {kind === 'wash' && (
        <ChangeMixes studio={studio} plan={plan} reading={reading} step={step} onChange={change} />
      )}
      <ChangeAdd plan={plan} reading={reading} step={step} onChange={change} />
    </Fold>
  );
}

interface ChangeSaidProps {
  studio: Studio;
  plan: Pick<WashPlan, 'steps'>;
  step: Step;
}

/**
 * While a change is worked out, that it is; then what will happen because of it, here or else at another step, or
 * that nothing is against it.
 */
function ChangeSaid({ studio, plan, step }: ChangeSaidProps) {
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
        Mind step {told.n}, {words(told.title)}:
      </strong>{' '}
      {words(told.consequence)}
    </p>
  );
}

interface ChangesSoFarProps {
  studio: Studio;
  plan: WashPlan;
}

/** Taking changes back, and the steps that are left out. */
function ChangesSoFar({ studio, plan }: ChangesSoFarProps) {
  const decisions = studio.painting.value?.decisions ?? [];
  const { length } = standingPlanEdits(decisions);
  return (
    <>
      <div class={styles.actions}>
        <UndoButtons
          decisions={decisions}
          kinds={['plan-edit']}
          onDecide={(decision) => void studio.decide(decision)}
        />
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
                <span>{words(title)}</span>
                <Button
                  aria-label={`Put back: ${words(title)}`}
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
