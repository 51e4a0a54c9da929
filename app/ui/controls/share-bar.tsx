import { cssColour } from '../../core/colour/lab.ts';
import type { Family } from '../../core/reading/reading.ts';
import { formatPercent } from '../../core/words/reading-words.ts';
import styles from './share-bar.module.css';

interface ShareBarProps {
  family: Family;
  /** All that bars are drawn of: the largest fills its place. */
  among: readonly Family[];
}

/** A colour of the picture as a stroke as long as its share of the sheet; the figure is told to a screen reader. */
export function ShareBar({ family, among }: ShareBarProps) {
  const most = Math.max(...among.map(({ share }) => share));
  return (
    <span class={styles.place}>
      <span
        class={styles.bar}
        style={{ background: cssColour(family.lab), width: `${(100 * family.share) / most}%` }}
      />
      <span class="spoken">{formatPercent(family.share)} of the sheet, </span>
    </span>
  );
}
