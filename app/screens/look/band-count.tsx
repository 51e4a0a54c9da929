import type { Reading } from '../../model/reading.ts';
import type { Stage } from '../../model/stage.ts';
import { readingWishes } from '../../model/wishes.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import styles from './study-facts.module.css';

const readingStages: readonly Stage[] = ['opening', 'looking', 'values', 'colours', 'shapes'];

/** How many values, why so many, and the way back from her own choice to what the picture asks for. */
export function BandCount({ studio, reading }: { studio: Studio; reading: Reading }) {
  const { bands, proposedBands, bandsWhy } = reading;
  const count = bands.length;
  const painting = studio.painting.value;
  const wishes = painting && readingWishes(painting.decisions, painting.reference);
  const own = wishes?.limits !== undefined || (wishes?.bands ?? proposedBands) !== proposedBands;
  const work = studio.work.value;
  const readsAnew = work !== null && readingStages.includes(work.stage);
  const take = (next: number): void => void studio.decide({ kind: 'bands', count: next });
  return (
    <>
      <div class={styles.choice}>
        <span>How many values</span>
        <span class={styles.stepper}>
          <Button
            aria-label="One value fewer"
            disabled={count <= 2}
            onClick={() => take(count - 1)}
          >
            −
          </Button>
          <output aria-live="polite">{count}</output>
          <Button aria-label="One value more" disabled={count >= 7} onClick={() => take(count + 1)}>
            +
          </Button>
        </span>
      </div>
      <p class={styles.quiet} role="status">
        {readsAnew
          ? 'Reading the picture anew …'
          : wishes?.limits
            ? 'The limits between the values are your own.'
            : own
              ? `What the picture asks for: ${proposedBands}. ${bandsWhy}`
              : bandsWhy}
      </p>
      {own && proposedBands >= 2 && (
        <Button onClick={() => take(proposedBands)}>Set the values by the picture</Button>
      )}
    </>
  );
}
