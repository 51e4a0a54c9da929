import type { SpotColours } from '../../drawing/spot-colours.ts';
import { compareSpots, comparisonWords } from '../../model/compare-spots.ts';
import type { Reading } from '../../model/reading.ts';
import { Button } from '../common/button.tsx';
import styles from './spot-card.module.css';
import { SpotFacts } from './spot-facts.tsx';
import { PairSwatches, SpotSwatches } from './spot-swatches.tsx';

interface SpotCardProps {
  reading: Reading;
  /** The first spot, and the second where there is one. */
  spots: readonly SpotColours[];
  onAgain: () => void;
}

/** What a touched spot is: its value and colour, on white, among its neighbours, beside another. */
export function SpotCard({ reading, spots, onAgain }: SpotCardProps) {
  const [first, second] = spots;
  if (!first)
    return (
      <div class={styles.card}>
        <p class={styles.lead} role="status">
          Touch a spot of the picture to see its value. Touch a second one to compare them.
        </p>
      </div>
    );
  return (
    <div class={styles.card} data-testid="spot">
      {second ? (
        <>
          <p class={styles.lead} role="status">
            The second is {comparisonWords(compareSpots(first.lab, second.lab))}.
          </p>
          <PairSwatches first={first} second={second} />
          <SpotFacts reading={reading} lab={first.lab} name="First" />
          <SpotFacts reading={reading} lab={second.lab} name="Second" />
        </>
      ) : (
        <>
          <div role="status">
            <SpotFacts reading={reading} lab={first.lab} />
          </div>
          <SpotSwatches spot={first} />
        </>
      )}
      <p class={styles.quiet}>
        {second ? 'Touch another spot to begin anew.' : 'Touch a second spot to compare.'}
      </p>
      <Button look="quiet" onClick={onAgain}>
        Take the marks off
      </Button>
    </div>
  );
}
