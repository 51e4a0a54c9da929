import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import { maxWashes, type PaperChoice } from '../../core/drying/paper-choice.ts';
import { eveningOf, eveningTimes } from '../../core/plan/evening/evening-times.ts';
import type { Step, WashPlan } from '../../core/plan/plan.ts';
import { hoursInWords } from '../../core/words/minutes.ts';
import { plannedAnew } from '../../core/words/notices.ts';
import { capitalize, spellCount } from '../../core/words/numbers.ts';
import { eveningName, planTimeInWords } from '../../core/words/plan/evenings.ts';
import { words } from '../../core/words/plan/words.ts';
import { typedMinutes } from '../../core/words/typed-number.ts';
import type { OwnAirState } from '../../state/own-air.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { PaperRows } from '../../ui/controls/paper-rows.tsx';
import { Fold } from '../../ui/layout/fold.tsx';
import { EveningFitWords } from './evening-fit-words.tsx';
import styles from './evening-panel.module.css';

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
    <Fold
      title="Time and paper"
      beside={`${planTimeInWords(eveningTimes(plan))}${
        plan.fit?.tooLong ? ` Longer than your ${hoursInWords(plan.fit.minutes)}.` : ''
      }`}
    >
      {studio.work.value && <p role="status">{plannedAnew}</p>}
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
        <p class="quiet">
          {words([{ say: 'caution/dryer' }, { say: 'caution/dryer-socket' }])} Never on a mask:
          until it is off the times are those of the air; after that they are those of the cool
          setting.
        </p>
      )}
      <EveningWashes plan={plan} studio={studio} paper={paper} />
      <PaperRows
        paper={paper}
        heading="h3"
        onChoose={(chosen) => void change({ weather, paper: chosen })}
      />
    </Fold>
  );
}

interface EveningMinutesProps {
  /** Null: no hurry. */
  minutes: number | null;
  onChoose: (minutes: number | null) => void;
}

const choices = [
  ['45', '45 minutes'],
  ['120', '2 hours'],
  ['none', 'No hurry'],
] as const;

/** How long she has for one evening: a usual time, none, or her own number of minutes. */
function EveningMinutes({ minutes, onChoose }: EveningMinutesProps) {
  const id = useId();
  const problem = useSignal<string | null>(null);
  const named = choices.find(([name]) => name === (minutes === null ? 'none' : String(minutes)));
  return (
    <>
      <h3>How long have you?</h3>
      <ChoiceRow
        label="How long have you?"
        choices={choices}
        chosen={named?.[0] ?? null}
        onChoose={(chosen) => {
          problem.value = null;
          onChoose(chosen === 'none' ? null : Number(chosen));
        }}
      />
      <label class={styles.field}>
        Or minutes
        <input
          type="text"
          inputMode="numeric"
          autocomplete="off"
          enterkeyhint="done"
          value={minutes === null ? '' : String(minutes)}
          aria-invalid={problem.value !== null}
          aria-describedby={problem.value ? `${id}-problem` : undefined}
          onChange={({ currentTarget }) => {
            const typed =
              currentTarget.value.trim() === '' ? null : typedMinutes(currentTarget.value);
            problem.value = typeof typed === 'string' ? typed : null;
            if (typeof typed !== 'string' && typed !== minutes) onChoose(typed);
          }}
        />
      </label>
      {problem.value && (
        <p id={`${id}-problem`} role="alert">
          {problem.value}
        </p>
      )}
    </>
  );
}

interface EveningWashesProps {
  plan: WashPlan;
  studio: Pick<Studio, 'painting' | 'decide'>;
  paper: PaperChoice;
}

/** More are hardly ever asked for; the paper may bear fewer. */
const mostOffered = 4;

/** How many washes lie over each other, why, and her own number. */
function EveningWashes({ plan, studio, paper }: EveningWashesProps) {
  const asked = lastDecision(studio.painting.value?.decisions ?? [], 'washes')?.count ?? null;
  // What she asked for on another paper stays to be seen.
  const most = Math.max(Math.min(mostOffered, maxWashes(paper)), asked ?? 0);
  const counts = Array.from(
    { length: most },
    (_, i) => [String(i + 1), capitalize(spellCount(i + 1))] as const,
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
      {plan.washesWhy && <p>{words(plan.washesWhy)}</p>}
      {plan.stepsWhy && <p class="quiet">{words(plan.stepsWhy)}</p>}
    </>
  );
}

/** Which evening a step belongs to, where the plan takes several. */
export function EveningLabel({ plan, step }: { plan: WashPlan; step: Step }) {
  const last = Math.max(...plan.steps.map(eveningOf));
  return last > 1 ? <p class={styles.evening}>{eveningName(eveningOf(step))}</p> : null;
}
