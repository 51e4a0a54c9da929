import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { tickedPaints, withTick } from '../../core/paint/own-box.ts';
import { isWhiteOrBlack, type PaintCard } from '../../core/paint/paint.ts';
import { asksForCare, careInShort } from '../../core/words/cautions.ts';
import { traitsInWords } from '../../core/words/paint/paint-traits.ts';
import {
  madeOfInWords,
  paintUsesInWords,
  pigmentsInWords,
  sourceInWords,
  valueSpanInWords,
} from '../../core/words/paint/paint-words.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { hashOf } from '../../state/router.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import { PaintLadder } from '../../ui/controls/paint-ladder.tsx';
import styles from './box-row.module.css';
import { StrengthNote } from './strength-note.tsx';

interface BoxRowProps {
  card: PaintCard;
  ownBox: OwnBoxState;
  /** What only a paint of her own has, in a few words: where its colour comes from. */
  note?: string | undefined;
  /** What can be done with a paint of her own: behind the touch. */
  children?: ComponentChildren;
}

/** A paint in one line: a touch anywhere on it ticks it, 'More' tells the rest. */
export function BoxRow({ card, ownBox, note, children }: BoxRowProps) {
  const open = useSignal(false);
  const id = useId();
  return (
    <li class={styles.row}>
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
        <PaintLadder class={styles.ladder} ladder={card.ladder} />
        <span class={styles.words}>
          <strong class={styles.name}>{card.name}</strong>
          <span class={styles.quiet}>{pigmentsInWords(card)}</span>
          {asksForCare(card) && <span class={styles.care}>{careInShort(card)}</span>}
          {note && <span class={styles.quiet}>{note}</span>}
        </span>
      </label>
      <button
        type="button"
        class={styles.more}
        aria-expanded={open.value}
        aria-controls={id}
        aria-label={`More about ${card.name}`}
        onClick={() => {
          open.value = !open.value;
        }}
      >
        {open.value ? 'Less' : 'More'}
      </button>
      <div id={id} class={styles.facts} hidden={!open.value}>
        {open.value && <PaintFacts card={card} />}
        {open.value && children}
        <StrengthNote ownBox={ownBox} paint={card.id} />
      </div>
    </li>
  );
}

/** What a paint is good for, what is known of it, and how sure its colour is. */
function PaintFacts({ card }: { card: PaintCard }) {
  const pigments = card.ci.length;
  return (
    <>
      <p>{paintUsesInWords(card)}</p>
      <p class={asksForCare(card) ? styles.caution : 'quiet'}>{card.care}</p>
      <p class="quiet">{traitsInWords(card)}</p>
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
    </>
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
