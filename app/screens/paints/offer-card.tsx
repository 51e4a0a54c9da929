import { cssColour } from '../../drawing/css-colour.ts';
import type { PaintCard } from '../../model/paint.ts';
import styles from './offer-card.module.css';

interface OfferCardProps {
  title: string;
  words: string;
  /** Its paints as far as they are known. */
  paints: readonly PaintCard[];
  /** More to say of it, a line each. */
  lines: readonly string[];
  disabled: boolean;
  onTake: () => void;
}

/** Loads as a wash, as a mid and as a dark: what a paint gives in the swatch. */
const shown = [1, 2, 4] as const;

/** A palette to take by a tap: its paints beside each other, what it is for, how close it comes. */
export function OfferCard({ title, words, paints, lines, disabled, onTake }: OfferCardProps) {
  return (
    <li>
      <button type="button" class={styles.card} disabled={disabled} onClick={onTake}>
        <span class={styles.strip} aria-hidden="true">
          {paints.map(({ id, ladder }) => (
            <span key={id}>
              {shown.map((step) => {
                const lab = ladder[step];
                return lab && <span key={step} style={{ background: cssColour(lab) }} />;
              })}
            </span>
          ))}
        </span>
        <span class={styles.words}>
          <strong>{title}</strong>
          <span class={styles.names}>{paints.map(({ name }) => name).join(', ')}</span>
          <span>{words}</span>
          {lines.map((line) => (
            <span key={line} class={styles.quiet}>
              {line}
            </span>
          ))}
        </span>
      </button>
    </li>
  );
}
