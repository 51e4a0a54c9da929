import { useId } from 'preact/hooks';
import styles from './paint-form.module.css';

interface TextFieldProps {
  label: string;
  hint?: string;
  value: string;
  /** Why what is typed can't be used; null where it can. */
  problem?: string | null;
  onType: (text: string) => void;
  /** More than a line is likely. */
  long?: boolean;
  /** She has finished typing. */
  onSettle?: () => void;
}

/** A line to type in, with what is wrong with it under it. */
export function TextField(props: TextFieldProps) {
  const { label, hint, value, problem = null, long = false, onType, onSettle } = props;
  const id = useId();
  const described = [hint && `${id}-hint`, problem && `${id}-problem`].filter(Boolean).join(' ');
  const Input = long ? 'textarea' : 'input';
  return (
    <div class={styles.field}>
      <label for={id}>{label}</label>
      {hint && (
        <span id={`${id}-hint`} class={styles.quiet}>
          {hint}
        </span>
      )}
      <Input
        id={id}
        class={styles.input}
        {...(long ? { rows: 2 } : { type: 'text' })}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        value={value}
        aria-invalid={problem !== null}
        aria-describedby={described || undefined}
        onInput={(event: { currentTarget: { value: string } }) => onType(event.currentTarget.value)}
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
