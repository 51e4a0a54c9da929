import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { typedMinutes } from '../../model/typed-minutes.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './evening-panel.module.css';

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
export function EveningMinutes({ minutes, onChoose }: EveningMinutesProps) {
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
        Or so many minutes
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
