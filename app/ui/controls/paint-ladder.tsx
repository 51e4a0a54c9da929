import { cssColour } from '../../core/colour/lab.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import styles from './paint-ladder.module.css';

interface PaintLadderProps extends Pick<PaintCard, 'ladder'> {
  /** How high it is and how it lies where it stands. */
  class?: string | undefined;
}

/** A paint from its palest tint to full strength, dry on white paper. */
export const PaintLadder = ({ ladder, class: own = '' }: PaintLadderProps) => (
  <span class={`${styles.ladder} ${own}`} aria-hidden="true">
    {ladder.map((lab) => (
      <span key={lab.join()} style={{ background: cssColour(lab) }} />
    ))}
  </span>
);
