import type { ComponentChildren } from 'preact';
import { paintUsesInWords, valueSpanInWords } from '../../core/paint/list-paints.ts';
import { tickedPaints, withTick } from '../../core/paint/own-box.ts';
import { isWhiteOrBlack, type PaintCard } from '../../core/paint/paint.ts';
import { traitsInWords } from '../../core/paint/paint-traits.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { hashOf } from '../../state/router.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import { PaintLadder } from '../../ui/controls/paint-ladder.tsx';
import styles from './box-row.module.css';

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
      <PaintLadder class={styles.ladder} ladder={card.ladder} />
      <div class={styles.words}>
        <strong class={styles.name}>{card.name}</strong>{' '}
        <span class="quiet">
          {card.ci.join(', ')}, {valueSpanInWords(card.ladder)}
        </span>
        <span>{paintUsesInWords(card)}</span>
        <span class="quiet">{traitsInWords(card)}</span>
        {card.ci.length > 1 && (
          <span class="quiet">
            {card.ci.length} pigments in one tube: it counts as {card.ci.length} in a mix, and mud
            comes sooner.
          </span>
        )}
        {isWhiteOrBlack(card.ci) && (
          <span class="quiet">Plans keep to the others unless you ask for it.</span>
        )}
        {caution && <span class="quiet">{caution}</span>}
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

/** The way from a paint of the box to measuring it. */
export function MeasureLink({ card }: { card: PaintCard }) {
  const again = card.optics?.from === 'measured';
  return (
    <a
      class={buttonClass(card.optics ? 'plain' : 'quiet')}
      href={hashOf({ screen: 'measure', paintId: card.id })}
    >
      {again ? 'Measure it again' : 'Measure it from a photo'}
      <span class="spoken">: {card.name}</span>
    </a>
  );
}
