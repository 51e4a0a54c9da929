import { cssGrey } from '../../core/colour/lab.ts';
import type { Band } from '../../core/reading/reading.ts';
import { bandWord } from '../../core/words/reading-words.ts';
import { valueInFigures } from '../../core/words/values.ts';
import styles from './value-scale.module.css';

const squares = Array.from({ length: 10 }, (_, i) => i); // square i stands for values i..i+1

interface ValueScaleProps {
  bands?: readonly Pick<Band, 'band' | 'from' | 'to' | 'value'>[];
  /** Bands already on the sheet: their line is drawn full. */
  done?: ReadonlySet<number>;
  /** The band looked at alone, or aimed at. */
  current?: ReadonlySet<number>;
  onBand?: (band: number) => void;
  numbers?: boolean;
}

/** The ten-step value scale, 0 black at the left to 10 white at the right, and the bands under it. */
export function ValueScale({ bands, done, current, onBand, numbers = true }: ValueScaleProps) {
  return (
    <div class={styles.scale}>
      <div class={styles.squares} aria-hidden="true">
        {squares.map((i) => (
          <span key={i} class={styles.square} style={{ background: cssGrey((i + 0.5) * 10) }} />
        ))}
      </div>
      {bands && (
        <div class={styles.bands}>
          {[...bands].reverse().map((band) => {
            const name = bandWord(band.band, bands.length);
            const text = numbers ? `${name}, value ${valueInFigures(band.value)}` : name;
            const state = {
              class: styles.band,
              style: { flexGrow: Math.max(14, band.to - band.from) },
              'data-done': done?.has(band.band) || undefined,
              'data-current': current?.has(band.band) || undefined,
            };
            return onBand ? (
              <button
                key={band.band}
                type="button"
                {...state}
                aria-pressed={current?.has(band.band) ?? false}
                aria-label={`Show only the ${text}`}
                onClick={() => onBand(band.band)}
              >
                {name}
              </button>
            ) : (
              <span key={band.band} {...state}>
                {name}
              </span>
            );
          })}
        </div>
      )}
      <div class={styles.ends}>
        <span>0 black</span>
        <span>value</span>
        <span>10 white</span>
      </div>
    </div>
  );
}
