import type { ComponentChildren } from 'preact';
import styles from './more-panels.module.css';

interface FoldProps {
  title: string;
  open?: boolean;
  children: ComponentChildren;
}

/** A panel of the sheet of further actions, folded under its name until it is asked for. */
export function Fold({ title, open = false, children }: FoldProps) {
  return (
    <details class={styles.fold} open={open} name="more">
      <summary>
        <h3>{title}</h3>
      </summary>
      <div class={styles.panel}>{children}</div>
    </details>
  );
}
