import type { Range } from '../../model/lab.ts';
import styles from './history-bar.module.css';

/** The range as a bar and the real time as a stroke, from nothing to the larger of the two. */
export function HistoryBar({ reckoned, real }: { reckoned: Range; real: number }) {
  const most = Math.max(reckoned[1], real) || 1;
  const at = (minutes: number): number => (100 * minutes) / most;
  return (
    <svg class={styles.bar} viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
      <path class={styles.line} d="M0 4H100" />
      <rect
        class={styles.range}
        x={at(reckoned[0])}
        y="1"
        width={Math.max(1, at(reckoned[1]) - at(reckoned[0]))}
        height="6"
      />
      <rect class={styles.real} x={Math.max(0, at(real) - 2)} y="0" width="2" height="8" />
    </svg>
  );
}
