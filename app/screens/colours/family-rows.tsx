import { cssColour } from '../../drawing/css-colour.ts';
import type { Family } from '../../model/reading.ts';
import { percent } from '../look/percent.ts';
import styles from './colours-panel.module.css';

interface FamilyRowsProps {
  families: readonly Family[];
  chosen: readonly number[];
  onToggle: (id: number) => void;
}

/** The colours of the picture, largest first; each can be chosen. */
export function FamilyRows({ families, chosen, onToggle }: FamilyRowsProps) {
  return (
    <ul class={styles.rows}>
      {families.map(({ id, lab, name, share }) => (
        <li key={id}>
          <button
            type="button"
            class={styles.row}
            aria-pressed={chosen.includes(id)}
            onClick={() => onToggle(id)}
          >
            <span class={styles.swatch} style={{ background: cssColour(lab) }} />
            <span class={styles.name}>{name}</span>
            <span class={styles.share}>{percent(share)}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
