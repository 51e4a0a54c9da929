import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import styles from './fold.module.css';

interface FoldProps {
  title: string;
  /** Seen while it is folded too. */
  beside?: ComponentChildren;
  /** What is costly to make: made when it is first opened. */
  late?: boolean;
  children: ComponentChildren;
}

/** A part of a page, folded under its name until it is asked for. */
export function Fold({ title, beside, late = false, children }: FoldProps) {
  const wasOpen = useSignal(false);
  return (
    <details
      class={styles.fold}
      onToggle={(event) => {
        if (event.currentTarget.open) wasOpen.value = true;
      }}
    >
      <summary>
        <h2>{title}</h2>
        {beside && <span class={styles.beside}>{beside}</span>}
      </summary>
      <div class={styles.body}>{(!late || wasOpen.value) && children}</div>
    </details>
  );
}
