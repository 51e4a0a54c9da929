import type { ComponentChildren } from 'preact';
import styles from './plan-fold.module.css';

interface PlanFoldProps {
  title: string;
  /** Seen while it is folded too. */
  beside?: ComponentChildren;
  children: ComponentChildren;
}

/** A part of the plan page, folded under its name until it is asked for. */
export function PlanFold({ title, beside, children }: PlanFoldProps) {
  return (
    <details class={styles.fold}>
      <summary>
        <h2>{title}</h2>
        {beside && <span class={styles.beside}>{beside}</span>}
      </summary>
      <div class={styles.body}>{children}</div>
    </details>
  );
}
