import { consistencyOf } from '../../model/consistency.ts';
import { familyNameIn } from '../../model/family-name-in.ts';
import type { PlanEdit } from '../../model/plan-edit.ts';
import type { Reading } from '../../model/reading.ts';
import { standingPlanEdits } from '../../model/standing-plan-edits.ts';
import type { Mix, Step, WashPlan } from '../../model/wash-plan.ts';
import type { Studio } from '../../state/studio.ts';
import { MixRows } from '../common/mix-rows.tsx';

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
    return edit?.kind === 'mix'
      ? { ...mix, parts: edit.parts, load: edit.load, consistency: consistencyOf(edit.load) }
      : mix;
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
      <h3>Mixed otherwise</h3>
      {mixes.map((mix) => (
        <MixRows
          key={mix.id}
          mix={mix}
          title={titleOf(mix)}
          palette={plan.palette}
          onChange={({ parts, load }) => {
            if (parts !== mix.parts || load !== mix.load)
              onChange({ kind: 'mix', mix: mix.id, parts, load });
          }}
        />
      ))}
    </>
  );
}
