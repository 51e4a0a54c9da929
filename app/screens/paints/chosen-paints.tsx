import type { PaintCard } from '../../model/paint.ts';
import { withoutPaint } from '../../model/palette-moves.ts';
import type { PaletteOffer } from '../../model/palette-offer.ts';
import type { PaletteEntry } from '../../model/wash-plan.ts';
import type { PaletteWish } from '../../model/wishes.ts';
import { Button } from '../common/button.tsx';
import { PaintRow } from './paint-row.tsx';
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
