import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import {
  leastSizeMm,
  type MassSizes,
  type MassWash,
  massSizes,
  massWashes,
  mostSizeMm,
  withSize,
} from '../../core/reading/masses.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { massesInWords, washNames } from '../../core/words/reading/masses.ts';
import { Button } from '../../ui/controls/button.tsx';
import { SliderRow } from '../../ui/controls/slider-row.tsx';
import styles from './colours-screen.module.css';

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
    <section class="stack" aria-labelledby="shapes-heading">
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
      <p class="quiet">
        The size for the darks is the finest brush: nothing smaller is left in the picture. In the
        washes before, shapes smaller than theirs are painted as one.
      </p>
      <Button disabled={!own} onClick={onUsual}>
        The usual sizes: {massWashes.map((wash) => massSizes[wash]).join(', ')} mm
      </Button>
    </section>
  );
}

/** A row of key presses is one decision: it is made once the keys rest this long. */
const restMs = 400;

interface MovedSizes {
  /** As they stand while she moves a slider and until that is decided. */
  readonly sizes: MassSizes;
  move(wash: MassWash, mm: number): void;
  settle(): void;
}

/** The sizes while sliders are moved; `onDecide` is told once they rest, or when the page is left. */
export function useMovedSizes(
  decided: MassSizes,
  onDecide: (sizes: MassSizes) => void,
): MovedSizes {
  const moved = useSignal<{ readonly wash: MassWash; readonly sizes: MassSizes } | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const before = useRef(decided);
  before.current = decided;
  const told = useRef(onDecide);
  told.current = onDecide;
  const decide = (): void => {
    clearTimeout(timer.current);
    const next = moved.value?.sizes;
    moved.value = null;
    if (next && massWashes.some((wash) => next[wash] !== before.current[wash])) told.current(next);
  };
  useEffect(() => decide, []);
  return {
    sizes: moved.value?.sizes ?? decided,
    move(wash, mm) {
      // Another slider starts from what this one has come to.
      const from = moved.value && moved.value.wash !== wash ? moved.value.sizes : null;
      if (from) decide();
      clearTimeout(timer.current);
      moved.value = { wash, sizes: withSize(from ?? decided, wash, mm) };
    },
    settle() {
      clearTimeout(timer.current);
      timer.current = setTimeout(decide, restMs);
    },
  };
}
