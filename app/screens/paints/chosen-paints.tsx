import type { ComponentChildren } from 'preact';
import {
  hasRoom,
  type PaletteWish,
  releasePaint,
  withoutPaint,
  withWishedPaint,
} from '../../core/decisions/wishes.ts';
import { asksForCare } from '../../core/paint/cautions.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { paintTraits } from '../../core/paint/paint-traits.ts';
import { pigmentsInWords } from '../../core/paint/paint-words.ts';
import type { PaletteOffer } from '../../core/palette/offers/palette-offer.ts';
import type { PaletteEntry } from '../../core/plan/plan.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PaintLadder } from '../../ui/controls/paint-ladder.tsx';
import styles from './paints-screen.module.css';

interface ChosenPaintsProps {
  palette: readonly PaletteEntry[];
  cards: readonly PaintCard[];
  /** The same palette judged; null until that is done. */
  offer: PaletteOffer | null;
  wish: PaletteWish;
  onWish: (wish: PaletteWish) => void;
}

/** The few paints of the plan: what each is for, and what is lost without it. */
export function ChosenPaints({ palette, cards, offer, wish, onWish }: ChosenPaintsProps) {
  return (
    <ul class={styles.rows}>
      {palette.map(({ id, why }) => {
        const card = cards.find((each) => each.id === id);
        const lost = offer?.paints.find((paint) => paint.id === id)?.lostWithout;
        return (
          card && (
            <PaintRow
              key={id}
              card={card}
              note={why}
              {...(lost && { lost: `Without it ${lost}.` })}
            >
              <Button
                aria-label={`Leave out ${card.name}`}
                onClick={() => onWish(withoutPaint(wish, id))}
              >
                Leave out
              </Button>
            </PaintRow>
          )
        );
      })}
    </ul>
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
          <PaintRow key={id} card={card} out={out}>
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
                  Use it
                </Button>
                {!wish.chosen && (
                  <Button
                    look="quiet"
                    aria-label={`Leave out: ${name}`}
                    onClick={() => onWish(withoutPaint(wish, id))}
                  >
                    Leave out
                  </Button>
                )}
              </span>
            )}
          </PaintRow>
        );
      })}
    </ul>
  );
}

interface PaintRowProps {
  card: PaintCard;
  note?: string;
  /** What gets worse without it. */
  lost?: string;
  out?: boolean;
  children: ComponentChildren;
}

/** A paint: its ladder from palest tint to full strength, its names, what the trade says of it. */
function PaintRow({ card, note, lost, out = false, children }: PaintRowProps) {
  return (
    <li class={styles.row} data-out={out || undefined}>
      <PaintLadder class={styles.ladder} ladder={card.ladder} />
      <span class={styles.words}>
        <strong class={styles.name}>{card.name}</strong>{' '}
        <span class="quiet">{pigmentsInWords(card)}</span>
        {note && <span class={styles.note}>{note}</span>}
        {lost && <span>{lost}</span>}
        <span class="quiet">{paintTraits(card.properties)}</span>
        {asksForCare(card) && <span class={styles.note}>{card.care}</span>}
      </span>
      <span>{children}</span>
    </li>
  );
}
