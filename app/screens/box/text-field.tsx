import { useId } from 'preact/hooks';
import styles from './paint-form.module.css';

interface TextFieldProps {
  label: string;
  hint?: string;
  value: string;
  /** Why what is typed can't be used; null where it can. */
  problem?: string | null;
  onType: (text: string) => void;
  /** She has finished typing. */
  onSettle?: () => void;
}

/** A line to type in, with what is wrong with it under it. */
export function TextField({
  label,
  hint,
  value,
  problem = null,
  onType,
  onSettle,
}: TextFieldProps) {
  const id = useId();
  return (
    <div class={styles.field}>
      <label for={id}>{label}</label>
      {hint && (
        <span id={`${id}-hint`} class={styles.quiet}>
          {hint}
        </span>
      )}
      <input
        id={id}
        class={styles.input}
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        value={value}
        aria-invalid={problem !== null}
        aria-describedby={[hint && `${id}-hint`, problem && `${id}-problem`]
          .filter(Boolean)
          .join(' ')}
        onInput={(event) => onType(event.currentTarget.value)}
        {...(onSettle && { onChange: onSettle })}
      />
      {problem && (
        <p id={`${id}-problem`} class={styles.problem} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
