import type { PaperChoice } from '../../model/drying/paper-choice.ts';
import { lastDecision } from '../../model/standing-decisions.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import { washesBorne } from '../../model/washes-borne.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './evening-panel.module.css';

interface EveningWashesProps {
  plan: WashPlan;
  studio: Pick<Studio, 'painting' | 'decide'>;
  paper: PaperChoice;
}

/** More are hardly ever asked for; the paper may bear fewer. */
const mostOffered = 4;

const names = ['One', 'Two', 'Three', 'Four'];

/** How many washes lie over each other, why, and her own number. */
export function EveningWashes({ plan, studio, paper }: EveningWashesProps) {
  const asked = lastDecision(studio.painting.value?.decisions ?? [], 'washes')?.count ?? null;
  // What she asked for on another paper stays to be seen.
  const most = Math.max(Math.min(mostOffered, washesBorne(paper)), asked ?? 0);
  const counts = Array.from(
    { length: most },
    (_, i) => [String(i + 1), names[i] ?? `${i + 1}`] as const,
  );
  return (
    <>
      <h3>Washes over each other</h3>
      <ChoiceRow
        label="Washes over each other"
        wraps
        choices={[['proposed', 'As proposed'], ...counts]}
        chosen={asked === null ? 'proposed' : String(asked)}
        onChoose={(chosen) =>
          void studio.decide({
            kind: 'washes',
            count: chosen === 'proposed' ? null : Number(chosen),
          })
        }
      />
      {plan.washesWhy && <p>{plan.washesWhy}</p>}
      {plan.stepsWhy && <p class={styles.quiet}>{plan.stepsWhy}</p>}
    </>
  );
}
