import { cssColour } from '../../core/colour/lab.ts';
import { chooseExactly, type PaletteWish } from '../../core/decisions/wishes.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { classicPalettes, resolveClassic } from '../../core/palette/classic-palettes.ts';
import type { PaletteOffers } from '../../core/palette/offers/palette-offer.ts';
import { classicWords, missingInWords } from '../../core/words/palette/classic-palettes.ts';
import {
  closenessInWords,
  offerTitle,
  offerWords,
  reachInWords,
} from '../../core/words/palette/palette-offer.ts';
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
  const { others, current: currentOffer } = offers;
  if (others.length === 0)
    return <p>No other palette from this box comes near enough to be worth a choice.</p>;
  return (
    <ul class={styles.cards}>
      {others.map((offer) => {
        const ids = offer.paints.map(({ id }) => id);
        return (
          <OfferCard
            key={ids.join()}
            title={offerTitle(offer.character)}
            words={offerWords(offer.character)}
            paints={ids.flatMap((id) => cards.find((card) => card.id === id) ?? [])}
            lines={[
              closenessInWords(offer.meanDifference, currentOffer.meanDifference),
              reachInWords(offer.valuesShort),
            ]}
            disabled={!current}
            onTake={() => onWish(chooseExactly(wish, ids))}
          />
        );
      })}
    </ul>
  );
}

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
        const lacks = missing.length > 0 ? [missingInWords(missing)] : [];
        return (
          <OfferCard
            key={classic.id}
            {...classicWords[classic.id]}
            paints={paints.flatMap((id) => owned.find((card) => card.id === id) ?? [])}
            lines={lacks}
            disabled={paints.length === 0}
            onTake={() => onWish(chooseExactly(wish, paints))}
          />
        );
      })}
    </ul>
  );
}

interface OfferCardProps {
  title: string;
  words: string;
  /** Its paints as far as they are known. */
  paints: readonly PaintCard[];
  /** More to say of it, a line each. */
  lines: readonly string[];
  disabled: boolean;
  onTake: () => void;
}

/** Loads as a wash, as a mid and as a dark: what a paint gives in the swatch. */
const shown = [1, 2, 4] as const;

/** A palette to take by a tap: its paints beside each other, what it is for, how close it comes. */
function OfferCard({ title, words, paints, lines, disabled, onTake }: OfferCardProps) {
  return (
    <li>
      <button type="button" class={styles.card} disabled={disabled} onClick={onTake}>
        <span class={styles.strip} aria-hidden="true">
          {paints.map(({ id, ladder }) => (
            <span key={id}>
              {shown.map((step) => {
                const lab = ladder[step];
                return lab && <span key={step} style={{ background: cssColour(lab) }} />;
              })}
            </span>
          ))}
        </span>
        <span class={styles.offerCardWords}>
          <strong>{title}</strong>
          <span class={styles.names}>{paints.map(({ name }) => name).join(', ')}</span>
          <span>{words}</span>
          {lines.filter(Boolean).map((line) => (
            <span key={line} class="quiet">
              {line}
            </span>
          ))}
        </span>
      </button>
    </li>
  );
}
