import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import {
  hasRoom,
  type PaletteWish,
  releasePaint,
  withoutPaint,
  withWishedPaint,
} from '../../core/decisions/wishes.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import type { PaletteOffer } from '../../core/palette/offers/palette-offer.ts';
import type { PaletteEntry } from '../../core/plan/plan.ts';
import { asksForCare, careInShort } from '../../core/words/cautions.ts';
import { capitalize } from '../../core/words/numbers.ts';
import { paintTraits } from '../../core/words/paint/paint-traits.ts';
import { pigmentsInWords } from '../../core/words/paint/paint-words.ts';
import { describeLoss } from '../../core/words/palette/palette-gaps.ts';
import { words } from '../../core/words/plan/words.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PaintLadder } from '../../ui/controls/paint-ladder.tsx';
import styles from './chosen-paints.module.css';

interface ChosenPaintsProps {
  palette: readonly PaletteEntry[];
  cards: readonly PaintCard[];
  /** The same palette judged; null until that is done. */
  offer: PaletteOffer | null;
  wish: PaletteWish;
  onWish: (wish: PaletteWish) => void;
}

/** The few paints to squeeze out, each with its job in the picture; the rest of it behind a touch. */
export function ChosenPaints({ palette, cards, offer, wish, onWish }: ChosenPaintsProps) {
  return (
    <ul class={styles.chosen}>
      {palette.map(({ id, why }) => {
        const card = cards.find((each) => each.id === id);
        const offered = offer?.paints.find((paint) => paint.id === id);
        const lost = offered && describeLoss(offered.lostWithout);
        return (
          card && (
            <ChosenPaint key={id} card={card} why={words(why)} lost={lost}>
              <Button
                aria-label={`Leave out ${card.name}`}
                onClick={() => onWish(withoutPaint(wish, id))}
              >
                Leave out
              </Button>
            </ChosenPaint>
          )
        );
      })}
    </ul>
  );
}

interface ChosenPaintProps {
  card: PaintCard;
  /** Its job in the picture. */
  why: string;
  /** What gets worse without it, to follow 'Without it'; missing until that is known. */
  lost: string | undefined;
  children: ComponentChildren;
}

/** One of the few: as large as a dab on the palette, its name, what it is for. */
function ChosenPaint({ card, why, lost, children }: ChosenPaintProps) {
  const open = useSignal(false);
  const id = useId();
  return (
    <li class={styles.paint}>
      <button
        type="button"
        class={styles.dab}
        aria-expanded={open.value}
        aria-controls={id}
        onClick={() => {
          open.value = !open.value;
        }}
      >
        <PaintLadder class={styles.swatch} ladder={card.ladder} />
        <span class={styles.words}>
          <strong class={styles.name}>{card.name}</strong>
          <span>{capitalize(why)}</span>
          {asksForCare(card) && <span class={styles.care}>{careInShort(card)}</span>}
        </span>
        <span class={styles.sign} aria-hidden="true">
          {open.value ? '−' : '+'}
        </span>
      </button>
      <div id={id} class={styles.more} hidden={!open.value}>
        {lost && <p>{`Without it ${lost}.`}</p>}
        <p class="quiet">
          {pigmentsInWords(card)}: {paintTraits(card.properties)}.
        </p>
        {asksForCare(card) && <p class={styles.caution}>{card.care}</p>}
        {children}
      </div>
    </li>
  );
}

interface BoxPaintsProps {
  /** Paints she owns that are not in the palette. */
  cards: readonly PaintCard[];
  wish: PaletteWish;
  onWish: (wish: PaletteWish) => void;
}

/** The rest of her box: each can be asked for, or kept out for good. */
export function BoxPaints({ cards, wish, onWish }: BoxPaintsProps) {
  return (
    <ul class={styles.rows}>
      {cards.map((card) => {
        const { id, name } = card;
        const out = wish.exclude.includes(id);
        return (
          <li key={id} class={styles.row} data-out={out || undefined}>
            <PaintLadder class={styles.ladder} ladder={card.ladder} />
            <span class={styles.words}>
              <span class={styles.name}>{name}</span>
              {asksForCare(card) && <span class={styles.care}>{careInShort(card)}</span>}
            </span>
            {out ? (
              <Button
                aria-label={`Allow again: ${name}`}
                onClick={() => onWish(releasePaint(wish, id))}
              >
                Allow again
              </Button>
            ) : (
              <span class={styles.acts}>
                <Button
                  aria-label={`Use it: ${name}`}
                  disabled={!hasRoom(wish)}
                  onClick={() => onWish(withWishedPaint(wish, id))}
                >
                  Use
                </Button>
                {!wish.chosen && (
                  <Button
                    look="quiet"
                    aria-label={`Never use: ${name}`}
                    onClick={() => onWish(withoutPaint(wish, id))}
                  >
                    Never
                  </Button>
                )}
              </span>
            )}
          </li>
        );
      })}
    </ul>
  );
}
