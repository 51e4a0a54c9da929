import { useSignal } from '@preact/signals';
import { type MassSizes, massSizes, massWashes } from '../../model/masses.ts';
import { massesInWords, washNames } from '../../model/masses-in-words.ts';
import type { Reading } from '../../model/reading.ts';
import { leastSizeMm, mostSizeMm, smallestSizes, withSize } from '../../model/smallest-sizes.ts';
import { Button } from '../common/button.tsx';
import { SliderRow } from '../common/slider-row.tsx';
import styles from './colours-panel.module.css';

interface ShapeSizesProps {
  reading: Reading;
  /** Hers, as decided; undefined: the usual ones. */
  wished: MassSizes | undefined;
  onDecide: (sizes: MassSizes | null) => void;
}

/** How many shapes there are to paint in each wash, and how small a shape may be. */
export function ShapeSizes({ reading, wished, onDecide }: ShapeSizesProps) {
  /** While a slider is held. */
  const moved = useSignal<MassSizes | null>(null);
  const decided = smallestSizes(wished);
  const sizes = moved.value ?? decided;
  const settle = (): void => {
    const next = moved.value;
    moved.value = null;
    if (next && massWashes.some((wash) => next[wash] !== decided[wash])) onDecide(next);
  };
  return (
    <section class={styles.section} aria-labelledby="shapes-heading">
      <h2 id="shapes-heading" class={styles.heading}>
        Shapes
      </h2>
      {reading.masses && (
        <p class={styles.hint} role="status" data-testid="masses">
          {massesInWords(reading.masses)}
        </p>
      )}
      <p>
        The smallest shape of each wash, on your sheet. What is smaller joins the neighbour nearest
        in value; whites and dark accents are kept.
      </p>
      {massWashes.map((wash) => (
        <SliderRow
          key={wash}
          label={washNames[wash]}
          said={`${sizes[wash]} mm`}
          min={leastSizeMm}
          max={mostSizeMm}
          step={1}
          value={sizes[wash]}
          onMove={(mm) => {
            moved.value = withSize(decided, wash, mm);
          }}
          onSettle={settle}
        />
      ))}
      <p class={styles.quiet}>
        The size for the darks is the finest brush: nothing smaller is left in the picture. In the
        washes before, shapes smaller than theirs are painted as one.
      </p>
      <Button disabled={!wished} onClick={() => onDecide(null)}>
        The usual sizes: {massWashes.map((wash) => massSizes[wash]).join(', ')} mm
      </Button>
    </section>
  );
}
