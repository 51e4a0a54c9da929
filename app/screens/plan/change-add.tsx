import { familyNameIn } from '../../model/family-name-in.ts';
import type { AddedKind, PlanEdit } from '../../model/plan-edit.ts';
import type { Reading } from '../../model/reading.ts';
import type { Step, WashPlan } from '../../model/wash-plan.ts';
import { Button } from '../common/button.tsx';
import styles from './change-step.module.css';

interface ChangeAddProps {
  plan: WashPlan;
  reading: Reading;
  step: Step;
  onChange: (edit: PlanEdit) => void;
}

const others: readonly (readonly [AddedKind, string])[] = [
  ['dry', 'Drying check'],
  ['lift', 'Lifting'],
  ['splatter', 'Splatter'],
  ['accents', 'Accents'],
];

/** What can be put in after a step: one more glaze of a colour it lays, or one of the others. */
export function ChangeAdd({ plan, reading, step, onChange }: ChangeAddProps) {
  const familyName = familyNameIn(plan, reading);
  const add = (what: AddedKind, mix: string | null = null): void =>
    onChange({ kind: 'add', id: crypto.randomUUID().slice(0, 8), what, mix, after: step.key });
  const rows = step.kind === 'wash' ? plan.mixes.filter(({ id }) => step.mixes.includes(id)) : [];
  const dries = step.kind === 'dry' || plan.steps[step.n]?.kind === 'dry';
  return (
    <>
      <h3>Add after it</h3>
      <div class={styles.actions}>
        {rows.map(({ id, family }) => (
          <Button key={id} onClick={() => add('wash', id)}>
            One more glaze, {familyName(family)}
          </Button>
        ))}
        {others
          .filter(([what]) => what !== 'dry' || !dries)
          .map(([what, words]) => (
            <Button key={what} onClick={() => add(what)}>
              {words}
            </Button>
          ))}
      </div>
    </>
  );
}
