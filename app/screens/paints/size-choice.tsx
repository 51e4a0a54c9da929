import { mostPaints, ofSize, searchedFreely } from '../../model/palette-moves.ts';
import type { PaletteWish } from '../../model/wishes.ts';
import { Button } from '../common/button.tsx';
import styles from './size-choice.module.css';

interface SizeChoiceProps {
  wish: PaletteWish;
  onWish: (wish: PaletteWish) => void;
}

/** How many paints the search may take; or, where she chose them herself, the way back to the search. */
export function SizeChoice({ wish, onWish }: SizeChoiceProps) {
  if (wish.chosen)
    return (
      <div class={styles.choice}>
        <span>These are your own choice.</span>
        <Button onClick={() => onWish(searchedFreely(wish))}>Search freely again</Button>
      </div>
    );
  const least = Math.max(1, wish.must.length);
  return (
    <div class={styles.choice}>
      <span>At most</span>
      <Button
        aria-label="One paint fewer"
        disabled={wish.n <= least}
        onClick={() => onWish(ofSize(wish, wish.n - 1))}
      >
        −
      </Button>
      <output aria-live="polite">{wish.n}</output>
      <Button
        aria-label="One paint more"
        disabled={wish.n >= mostPaints}
        onClick={() => onWish(ofSize(wish, wish.n + 1))}
      >
        +
      </Button>
      <span>{wish.n === 1 ? 'paint' : 'paints'}</span>
      {wish.n > 1 && wish.n === wish.must.length && (
        <span class={styles.quiet}>
          You asked for all {wish.n} of them: fewer by letting one go.
        </span>
      )}
    </div>
  );
}
