import type { PlanEdit } from '../../model/plan-edit.ts';
import type { Reading } from '../../model/reading.ts';
import { movedEarlier, movedLater, standsByItself } from '../../model/step-moves.ts';
import { techniqueChoices } from '../../model/technique-choices.ts';
import { canBeSplit, nextWash } from '../../model/wash-goes.ts';
import type { Step, WashPlan } from '../../model/wash-plan.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import { ChangeAdd } from './change-add.tsx';
import { ChangeMixes } from './change-mixes.tsx';
import { ChangeSaid } from './change-said.tsx';
import styles from './change-step.module.css';
import { ChangesSoFar } from './changes-so-far.tsx';
import { PlanFold } from './plan-fold.tsx';

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
  const techniques = techniqueChoices(kind);
  return (
    <PlanFold title="Change this step">
      <ChangesSoFar studio={studio} plan={plan} />
      <p class={styles.which}>
        {step.n}. {step.title}
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
          <Button onClick={() => change({ kind: 'split', key })}>In two goes</Button>
        )}
        {nextWash(plan, step) && (
          <Button onClick={() => change({ kind: 'merge', key })}>Together with the next</Button>
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
    </PlanFold>
  );
}
