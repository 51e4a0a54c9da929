import type { PassagesChoice } from '../../core/decisions/plan-edit.ts';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import { plannedAnew } from '../../core/words/notices.ts';
import { words } from '../../core/words/plan/words.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { Fold } from '../../ui/layout/fold.tsx';

interface PassagesFoldProps {
  plan: WashPlan;
  studio: Pick<Studio, 'painting' | 'decide' | 'work'>;
}

const choices = [
  ['ground first', 'Background first'],
  ['subject first', 'Subject first'],
  ['together', 'Together'],
] as const satisfies readonly (readonly [PassagesChoice, string])[];

/** In what order ground and subject are painted, why, and her own order; nothing where there is no subject. */
export function PassagesFold({ plan: { passages }, studio }: PassagesFoldProps) {
  if (!passages) return null;
  const asked = lastDecision(studio.painting.value?.decisions ?? [], 'passages')?.order ?? null;
  return (
    <Fold title="Background and subject" beside={words(passages.why)}>
      {studio.work.value && <p role="status">{plannedAnew}</p>}
      <ChoiceRow<PassagesChoice | 'proposed'>
        label="Background and subject"
        wraps
        choices={[['proposed', `As proposed (${passages.proposed})`], ...choices]}
        chosen={asked ?? 'proposed'}
        onChoose={(chosen) =>
          void studio.decide({ kind: 'passages', order: chosen === 'proposed' ? null : chosen })
        }
      />
    </Fold>
  );
}
