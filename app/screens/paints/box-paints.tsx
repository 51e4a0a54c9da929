import type { PaintCard } from '../../model/paint.ts';
import { hasRoom, letBe, withoutPaint, withPaint } from '../../model/palette-moves.ts';
import type { PaletteWish } from '../../model/wishes.ts';
import { Button } from '../common/button.tsx';
import { PaintRow } from './paint-row.tsx';
import styles from './paints-screen.module.css';

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
              <Button aria-label={`Allow again: ${name}`} onClick={() => onWish(letBe(wish, id))}>
                Allow again
              </Button>
            ) : (
              <span class={styles.acts}>
                <Button
                  aria-label={`Use it: ${name}`}
                  disabled={!hasRoom(wish)}
                  onClick={() => onWish(withPaint(wish, id))}
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
