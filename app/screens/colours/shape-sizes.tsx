import { type MassWash, massSizes, massWashes } from '../../model/masses.ts';
import { massesInWords, washNames } from '../../model/masses-in-words.ts';
import type { Reading } from '../../model/reading.ts';
import { leastSizeMm, mostSizeMm } from '../../model/smallest-sizes.ts';
import { Button } from '../common/button.tsx';
import { SliderRow } from '../common/slider-row.tsx';
import styles from './colours-panel.module.css';
import type { MovedSizes } from './use-moved-sizes.ts';

interface ShapeSizesProps {
  reading: Reading;
  moved: MovedSizes;
  /** Whether sizes of her own are decided. */
  own: boolean;
  /** The wash whose slider she moves. */
  onMove: (wash: MassWash) => void;
  onUsual: () => void;
}

/** How many shapes there are to paint in each wash, and how small a shape may be. */
export function ShapeSizes({ reading, moved, own, onMove, onUsual }: ShapeSizesProps) {
  const { sizes } = moved;
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
            onMove(wash);
            moved.move(wash, mm);
          }}
          onSettle={moved.settle}
        />
      ))}
      <p class={styles.quiet}>
        The size for the darks is the finest brush: nothing smaller is left in the picture. In the
        washes before, shapes smaller than theirs are painted as one.
      </p>
      <Button disabled={!own} onClick={onUsual}>
        The usual sizes: {massWashes.map((wash) => massSizes[wash]).join(', ')} mm
      </Button>
    </section>
  );
}
