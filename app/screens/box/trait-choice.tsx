import { Button } from '../common/button.tsx';
import styles from './paint-form.module.css';

interface TraitChoiceProps<T extends string | number> {
  title: string;
  choices: readonly (readonly [value: T, text: string])[];
  /** Null: nobody knows. */
  chosen: T | null;
  /** She said so herself; else it comes from memory. */
  isHers: boolean;
  onChoose: (value: T) => void;
  onRemember: () => void;
}

/** One property, where it comes from, and the way back to what is remembered. */
export function TraitChoice<T extends string | number>(props: TraitChoiceProps<T>) {
  const { title, choices, chosen, isHers, onChoose, onRemember } = props;
  return (
    <fieldset class={styles.trait}>
      <legend>
        {title}{' '}
        <span class={styles.quiet}>
          {isHers ? 'Yours.' : chosen === null ? 'Unknown.' : 'From memory.'}
        </span>
      </legend>
      {choices.map(([value, text]) => (
        <Button key={value} aria-pressed={value === chosen} onClick={() => onChoose(value)}>
          {text}
        </Button>
      ))}
      {isHers && (
        <Button look="quiet" aria-label={`${title} from memory`} onClick={onRemember}>
          As remembered
        </Button>
      )}
    </fieldset>
  );
}
