import styles from './value-help.module.css';

/** How a value is come by in watercolour (common practice, no source). */
export function ValueHelp() {
  return (
    <details class={styles.roads}>
      <summary class={styles.heading}>Three ways to a lighter or darker value</summary>
      <ol class={styles.list}>
        <li>
          <strong>Water.</strong> The more water, the more paper shows through: the same mix goes
          from dark to nearly white.
        </li>
        <li>
          <strong>Light and dark paints.</strong> A yellow never gets dark, a deep blue is dark at
          once. Take the paint whose own value is near.
        </li>
        <li>
          <strong>Paper, mixing, layers.</strong> Leave the paper for the lightest. For darker, mix
          a darker paint in, or lay a second wash over the dry first.
        </li>
      </ol>
    </details>
  );
}
