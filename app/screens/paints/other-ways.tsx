import type { PaintCard } from '../../model/paint.ts';
import {
  closenessInWords,
  offerTitle,
  offerWords,
  reachInWords,
} from '../../model/palette-in-words.ts';
import { justThese } from '../../model/palette-moves.ts';
import type { PaletteOffers } from '../../model/palette-offer.ts';
import type { PaletteWish } from '../../model/wishes.ts';
import { OfferCard } from './offer-card.tsx';
import styles from './paints-screen.module.css';

interface OtherWaysProps {
  offers: PaletteOffers;
  cards: readonly PaintCard[];
  /** False while they belong to an earlier plan. */
  current: boolean;
  wish: PaletteWish;
  onWish: (wish: PaletteWish) => void;
}

/** Other palettes that do nearly as well, each for a reason. */
export function OtherWays({ offers, cards, current, wish, onWish }: OtherWaysProps) {
  const { others, current: now } = offers;
  if (others.length === 0)
    return <p>No other palette of this box comes near enough to be worth a choice.</p>;
  return (
    <ul class={styles.cards}>
      {others.map((offer) => {
        const ids = offer.paints.map(({ id }) => id);
        return (
          <OfferCard
            key={ids.join()}
            title={offerTitle(offer.character, now.character)}
            words={offerWords(offer.character, now.character)}
            paints={ids.flatMap((id) => cards.find((card) => card.id === id) ?? [])}
            lines={[
              closenessInWords(offer.meanDifference, now.meanDifference),
              reachInWords(offer.valuesShort),
            ]}
            disabled={!current}
            onTake={() => onWish(justThese(wish, ids))}
          />
        );
      })}
    </ul>
  );
}
