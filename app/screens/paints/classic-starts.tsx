import { classicPalettes } from '../../model/classic-palettes.ts';
import type { PaintCard } from '../../model/paint.ts';
import { justThese } from '../../model/palette-moves.ts';
import { resolveClassic } from '../../model/resolve-classic.ts';
import type { PaletteWish } from '../../model/wishes.ts';
import { OfferCard } from './offer-card.tsx';
import styles from './paints-screen.module.css';

interface ClassicStartsProps {
  /** The paints she owns. */
  owned: readonly PaintCard[];
  wish: PaletteWish;
  onWish: (wish: PaletteWish) => void;
}

/** Palettes painters have long started from, in her own paints. */
export function ClassicStarts({ owned, wish, onWish }: ClassicStartsProps) {
  return (
    <ul class={styles.cards}>
      {classicPalettes.map((classic) => {
        const { paints, missing } = resolveClassic(classic, owned);
        const lacks = missing.length > 0 ? [`Not in your box: ${missing.join(', ')}.`] : [];
        return (
          <OfferCard
            key={classic.id}
            title={classic.title}
            words={classic.words}
            paints={paints.flatMap((id) => owned.find((card) => card.id === id) ?? [])}
            lines={lacks}
            disabled={paints.length === 0}
            onTake={() => onWish(justThese(wish, paints))}
          />
        );
      })}
    </ul>
  );
}
