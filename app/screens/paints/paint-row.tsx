import type { ComponentChildren } from 'preact';
import { cssColour } from '../../drawing/css-colour.ts';
import type { PaintCard } from '../../model/paint.ts';
import { paintTraits } from '../../model/paint-traits.ts';
import styles from './paint-row.module.css';

interface PaintRowProps {
  card: PaintCard;
  note?: string;
  /** What gets worse without it. */
  lost?: string;
  out?: boolean;
  children: ComponentChildren;
}

/** A paint: its ladder from palest tint to full strength, its names, what the trade says of it. */
export function PaintRow({ card, note, lost, out = false, children }: PaintRowProps) {
  return (
    <li class={styles.row} data-out={out || undefined}>
      <span class={styles.ladder} aria-hidden="true">
        {card.ladder.map((lab) => (
          <span key={lab.join()} style={{ background: cssColour(lab) }} />
        ))}
      </span>
      <span class={styles.words}>
        <strong class={styles.name}>{card.name}</strong>{' '}
        <span class={styles.quiet}>{card.ci.join(', ')}</span>
        {note && <span class={styles.note}>{note}</span>}
        {lost && <span>{lost}</span>}
        <span class={styles.quiet}>{paintTraits(card.properties)}</span>
        {card.properties.caution && <span class={styles.quiet}>{card.properties.caution}</span>}
      </span>
      <span class={styles.act}>{children}</span>
    </li>
  );
}
