import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { asksForCare } from '../../core/paint/cautions.ts';
import { paintUsesInWords, valueSpanInWords } from '../../core/paint/list-paints.ts';
import { tickedPaints, withTick } from '../../core/paint/own-box.ts';
import { isWhiteOrBlack, type PaintCard } from '../../core/paint/paint.ts';
import { traitsInWords } from '../../core/paint/paint-traits.ts';
import { madeOfInWords, pigmentsInWords, sourceInWords } from '../../core/paint/paint-words.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { hashOf } from '../../state/router.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import { PaintLadder } from '../../ui/controls/paint-ladder.tsx';
import styles from './box-row.module.css';
import { StrengthNote } from './strength-note.tsx';

interface BoxRowProps {
  card: PaintCard;
  ownBox: OwnBoxState;
  /** What only a paint of her own has: where its optics come from, what can be done with it. */
  children?: ComponentChildren;
}

/** A paint: its ladder, its names, its caution and 'I own it'; the rest behind a touch. */
export function BoxRow({ card, ownBox, children }: BoxRowProps) {
  const open = useSignal(false);
  return (
    <li class={styles.row}>
      <PaintLadder class={styles.ladder} ladder={card.ladder} />
      <div class={styles.words}>
        <details
          onToggle={(event) => {
            open.value = event.currentTarget.open;
          }}
        >
          <summary class={styles.summary}>
            <strong class={styles.name}>{card.name}</strong>{' '}
            <span class="quiet">{pigmentsInWords(card)}</span>
          </summary>
          {open.value && <PaintFacts card={card} />}
        </details>
        {asksForCare(card) && <p class={styles.caution}>{card.care}</p>}
        <StrengthNote ownBox={ownBox} paint={card.id} />
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

/** What a paint is good for, what is known of it, and how sure its colour is. */
function PaintFacts({ card }: { card: PaintCard }) {
  const pigments = card.ci.length;
  return (
    <div class={styles.facts}>
      <p>{paintUsesInWords(card)}</p>
      <p class="quiet">{traitsInWords(card)}</p>
      {!asksForCare(card) && <p class="quiet">{card.care}</p>}
      <p class="quiet">From palest tint to full strength: {valueSpanInWords(card.ladder)}.</p>
      {card.madeOf && <p>{madeOfInWords(card)}</p>}
      {pigments > 1 && (
        <p class="quiet">It counts as {pigments} pigments in a mix, and mud comes sooner.</p>
      )}
      {isWhiteOrBlack(card.ci) && (
        <p class="quiet">Plans keep to the others unless you ask for it.</p>
      )}
      {card.provenance && <p>{sourceInWords(card)}</p>}
      {!card.optics && (
        <p>
          <MeasureLink card={card} />
        </p>
      )}
    </div>
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
