import { cssColour } from '../../drawing/css-colour.ts';
import type { PaintCard } from '../../model/paint.ts';
import styles from './hues-panel.module.css';

interface PaintPickerProps {
  cards: readonly PaintCard[];
  chosen: string | null;
  onChoose: (paint: string) => void;
}

/** Her paints by their ladders, to choose one. */
export function PaintPicker({ cards, chosen, onChoose }: PaintPickerProps) {
  if (cards.length === 0) return <p>Laying out your paints …</p>;
  return (
    <ul class={styles.paints} aria-label="Your paints">
      {cards.map(({ id, name, ladder }) => (
        <li key={id}>
          <button
            type="button"
            class={styles.paint}
            aria-pressed={id === chosen}
            onClick={() => onChoose(id)}
          >
            <span class={styles.ladder}>
              {ladder.map((lab) => (
                <span key={lab.join()} style={{ background: cssColour(lab) }} />
              ))}
            </span>
            <span class={styles.name}>{name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
