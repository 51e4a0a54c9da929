import { cssColour } from '../../drawing/css-colour.ts';
import type { PaintCard } from '../../model/paint.ts';
import styles from './ladder.module.css';

/** A paint from its palest tint to full strength, dry on white paper. */
export function Ladder({ ladder }: Pick<PaintCard, 'ladder'>) {
  return (
    <span class={styles.ladder} aria-hidden="true">
      {ladder.map((lab) => (
        <span key={lab.join()} style={{ background: cssColour(lab) }} />
      ))}
    </span>
  );
}
