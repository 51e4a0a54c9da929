import styles from './choice-row.module.css';

interface ChoiceRowProps<T extends string> {
  label: string;
  choices: readonly (readonly [value: T, text: string])[];
  chosen: T | null;
  onChoose: (value: T) => void;
}

/** A few choices side by side, one of them taken. */
export function ChoiceRow<T extends string>({
  label,
  choices,
  chosen,
  onChoose,
}: ChoiceRowProps<T>) {
  return (
    <fieldset class={styles.row}>
      <legend class="spoken">{label}</legend>
      {choices.map(([value, text]) => (
        <button
          key={value}
          type="button"
          class={styles.choice}
          aria-pressed={value === chosen}
          onClick={() => onChoose(value)}
        >
          {text}
        </button>
      ))}
    </fieldset>
  );
}
