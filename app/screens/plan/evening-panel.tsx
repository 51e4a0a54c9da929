import { eveningTimes } from '../../model/evening-times.ts';
import { hoursInWords, planTimeInWords } from '../../model/evening-words.ts';
import { lastDecision } from '../../model/standing-decisions.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import type { OwnAirState } from '../../state/own-air.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { PaperRows } from '../common/paper-rows.tsx';
import { EveningFitWords } from './evening-fit-words.tsx';
import { EveningMinutes } from './evening-minutes.tsx';
import styles from './evening-panel.module.css';
import { EveningWashes } from './evening-washes.tsx';
import { PlanFold } from './plan-fold.tsx';

interface EveningPanelProps {
  plan: WashPlan;
  studio: Studio;
  ownAir: Pick<OwnAirState, 'air' | 'set'>;
}

const dryings = [
  ['air', 'By air'],
  ['dryer', 'Hair dryer'],
] as const;

/** How long she has, how it dries, on what paper: what the plan is fitted to, and how long it takes. */
export function EveningPanel({ plan, studio, ownAir }: EveningPanelProps) {
  const { weather, paper } = ownAir.air.value;
  const decisions = studio.painting.value?.decisions ?? [];
  const minutes = lastDecision(decisions, 'evening')?.minutes ?? null;
  const change = async (air: Parameters<OwnAirState['set']>[0]): Promise<void> => {
    // What can't be kept counts all the same for now.
    await ownAir.set(air).catch(() => undefined);
    studio.again();
  };
  return (
    <PlanFold
      title="Time and paper"
      beside={`${planTimeInWords(eveningTimes(plan))}${
        plan.fit?.tooLong ? ` Longer than your ${hoursInWords(plan.fit.minutes)}.` : ''
      }`}
    >
      {studio.work.value && <p role="status">The plan is being worked out anew.</p>}
      <EveningMinutes
        minutes={minutes}
        onChoose={(chosen) => void studio.decide({ kind: 'evening', minutes: chosen })}
      />
      <EveningFitWords plan={plan} studio={studio} />
      <h3>Drying</h3>
      <ChoiceRow
        label="Drying"
        choices={dryings}
        chosen={weather.hairDryer ? 'dryer' : 'air'}
        onChoose={(chosen) =>
          void change({ weather: { ...weather, hairDryer: chosen === 'dryer' }, paper })
        }
      />
      {weather.hairDryer && (
        <p class={styles.quiet}>
          Only once the shine has gone, low and cool, never on a mask: until the mask is off the
          times are those of the air.
        </p>
      )}
      <EveningWashes plan={plan} studio={studio} paper={paper} />
      <PaperRows
        paper={paper}
        heading="h3"
        onChoose={(chosen) => void change({ weather, paper: chosen })}
      />
    </PlanFold>
  );
}
