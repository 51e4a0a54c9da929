import styles from './choice-row.module.css';

interface ChoiceRowProps<T extends string> {
  label: string;
  choices: readonly (readonly [value: T, text: string])[];
  chosen: T | null;
  /** Not to be had yet. */
  waiting?: readonly T[];
  onChoose: (value: T) => void;
  /** Too many for one line: they stand in as many as they need. */
  wraps?: boolean;
}

/** A few choices side by side, one of them taken. */
export function ChoiceRow<T extends string>({
  label,
  choices,
  chosen,
  waiting = [],
  onChoose,
  wraps = false,
}: ChoiceRowProps<T>) {
  return (
    <fieldset class={styles.row} data-wraps={wraps || undefined}>
      <legend class="spoken">{label}</legend>
      {choices.map(([value, text]) => (
        <button
          key={value}
          type="button"
          class={styles.choice}
          aria-pressed={value === chosen}
          disabled={waiting.includes(value)}
          onClick={() => onChoose(value)}
        >
          {text}
        </button>
      ))}
    </fieldset>
  );
}
