import type { AddedKind, PlanEdit } from '../../core/decisions/plan-edit.ts';
import { standingPlanEdits } from '../../core/decisions/standing-decisions.ts';
import { consistencyOf } from '../../core/paint/consistency.ts';
import { amountsIn } from '../../core/paint/former-amounts.ts';
import { familyNameIn } from '../../core/plan/family-name-in.ts';
import type { Mix, Step, WashPlan } from '../../core/plan/plan.ts';
import type { Reading } from '../../core/reading/reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import { MixRows } from '../../ui/mixes/mix-rows.tsx';
import styles from './change-step.module.css';

interface ChangeMixesProps {
  studio: Studio;
  plan: WashPlan;
  reading: Reading;
  step: Step;
  onChange: (edit: PlanEdit) => void;
}

/** The mixes of a wash, as last changed: also before the plan has followed. */
export function ChangeMixes({ studio, plan, reading, step, onChange }: ChangeMixesProps) {
  const edits = standingPlanEdits(studio.painting.value?.decisions ?? []);
  const asChanged = (mix: Mix): Mix => {
    const edit = edits.findLast((one) => one.kind === 'mix' && one.mix === mix.id);
    const amounts = edit?.kind === 'mix' && amountsIn('ml', edit, plan.optics);
    return amounts ? { ...mix, ...amounts, consistency: consistencyOf(amounts.load) } : mix;
  };
  const familyName = familyNameIn(plan, reading);
  const mixes = plan.mixes.filter(({ id }) => step.mixes.includes(id)).map(asChanged);
  // Two washes in one go lay two rows on a colour.
  const titleOf = ({ family, wash }: Mix): string => {
    const isAlone = mixes.filter((other) => other.family === family).length < 2;
    return `For the ${familyName(family)}${isAlone ? '' : `, as in wash ${wash}`}`;
  };
  return (
    <>
      <h3>Change the mix</h3>
      {mixes.map((mix) => (
        <MixRows
          key={mix.id}
          mix={mix}
          title={titleOf(mix)}
          palette={plan.palette}
          onChange={({ parts, load }) => {
            if (parts !== mix.parts || load !== mix.load)
              onChange({ kind: 'mix', mix: mix.id, parts, load, unit: 'ml' });
          }}
        />
      ))}
    </>
  );
}

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
