import type { ComponentChildren } from 'preact';
import { withTick } from '../../model/change-own-box.ts';
import { goodForInWords } from '../../model/good-for.ts';
import { tickedPaints } from '../../model/own-box.ts';
import { isWhiteOrBlack, type PaintCard } from '../../model/paint.ts';
import { traitsInWords } from '../../model/traits-by-source.ts';
import { valueSpanInWords } from '../../model/value-span.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import styles from './box-row.module.css';
import { Ladder } from './ladder.tsx';

interface BoxRowProps {
  card: PaintCard;
  ownBox: OwnBoxState;
  /** What only a paint of her own has: where its optics come from, what can be done with it. */
  children?: ComponentChildren;
}

/** A paint: its ladder, its names, the values it spans, what it is good for, and 'I own it'. */
export function BoxRow({ card, ownBox, children }: BoxRowProps) {
  const { caution } = card.properties;
  return (
    <li class={styles.row}>
      <Ladder ladder={card.ladder} />
      <div class={styles.words}>
        <strong class={styles.name}>{card.name}</strong>{' '}
        <span class={styles.quiet}>
          {card.ci.join(', ')}, {valueSpanInWords(card.ladder)}
        </span>
        <span>{goodForInWords(card)}</span>
        <span class={styles.quiet}>{traitsInWords(card)}</span>
        {card.ci.length > 1 && (
          <span class={styles.quiet}>
            {card.ci.length} pigments in one tube: it counts as {card.ci.length} in a mix, and mud
            comes sooner.
          </span>
        )}
        {isWhiteOrBlack(card.ci) && (
          <span class={styles.quiet}>Plans keep to the others unless you ask for it.</span>
        )}
        {caution && <span class={styles.quiet}>{caution}</span>}
        {children}
      </div>
      <label class={styles.tick}>
        <input
          type="checkbox"
          class={styles.box}
          aria-label={`I own it: ${card.name}`}
          checked={tickedPaints(ownBox.box.value)?.includes(card.id) ?? false}
          onChange={(event) => {
            const owns = event.currentTarget.checked;
            void ownBox.change((before) => withTick(before, card.id, owns));
          }}
        />
        I own it
      </label>
    </li>
  );
}
