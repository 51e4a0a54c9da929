import type { PassagesChoice } from '../../model/passages-choice.ts';
import { lastDecision } from '../../model/standing-decisions.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { PlanFold } from './plan-fold.tsx';

interface PassagesFoldProps {
  plan: WashPlan;
  studio: Pick<Studio, 'painting' | 'decide' | 'work'>;
}

const choices = [
  ['ground first', 'Ground first'],
  ['subject first', 'Subject first'],
  ['together', 'Together'],
] as const satisfies readonly (readonly [PassagesChoice, string])[];

/** In what order ground and subject are painted, why, and her own order; nothing where there is no subject. */
export function PassagesFold({ plan: { passages }, studio }: PassagesFoldProps) {
  if (!passages) return null;
  const asked = lastDecision(studio.painting.value?.decisions ?? [], 'passages')?.order ?? null;
  return (
    <PlanFold title="Ground and subject" beside={passages.why}>
      {studio.work.value && <p role="status">The plan is being worked out anew.</p>}
      <ChoiceRow<PassagesChoice | 'proposed'>
        label="Ground and subject"
        wraps
        choices={[['proposed', `As proposed (${passages.proposed})`], ...choices]}
        chosen={asked ?? 'proposed'}
        onChoose={(chosen) =>
          void studio.decide({ kind: 'passages', order: chosen === 'proposed' ? null : chosen })
        }
      />
    </PlanFold>
  );
}
