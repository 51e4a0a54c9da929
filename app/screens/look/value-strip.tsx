import { useMemo } from 'preact/hooks';
import { limitsOf, roomOfLimit } from '../../model/band-limits.ts';
import { bandWord } from '../../model/band-words.ts';
import { bandsByLimits } from '../../model/bands-by-limits.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import type { Reading } from '../../model/reading.ts';
import { ValueScale } from '../common/value-scale.tsx';
import { histogramShape } from './histogram-shape.ts';
import { useLimitDrag } from './use-limit-drag.ts';
import { useLimitKeys } from './use-limit-keys.ts';
import styles from './value-strip.module.css';

interface ValueStripProps {
  reading: Reading;
  /** Limits being moved; null while they are those of the reading. */
  moved: readonly number[] | null;
  only: number | null;
  onBand: (band: number) => void;
  onMove: (limits: readonly number[] | null) => void;
  onSettle: (limits: readonly number[]) => void;
}

/** The value scale, over it how much of the picture has each value, and the limits to be dragged. */
export function ValueStrip({ reading, moved, only, onBand, onMove, onSettle }: ValueStripProps) {
  const { histogram } = reading.lightness;
  const shape = useMemo(() => histogramShape(histogram), [histogram]);
  const limits = moved ?? limitsOf(reading.bands);
  const handlers = useLimitDrag({ limits, onMove, onSettle });
  const keys = useLimitKeys(limits, onMove, onSettle);
  const count = limits.length + 1;
  const bands = bandsByLimits(histogram, limits).map((band) => ({
    ...band,
    value: valueOfLightness(band.lightness),
  }));
  return (
    <div class={styles.strip}>
      <div class={styles.track} data-testid="limits" {...handlers}>
        <svg class={styles.histogram} viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden>
          <path d={shape} />
        </svg>
        {limits.map((limit, which) => {
          const value = valueOfLightness(limit);
          const [light, dark] = [count - 1 - which, count - which];
          const name = `limit between ${bandWord(light, count)} and ${bandWord(dark, count)}`;
          const [low, high] = roomOfLimit(limits, which);
          return (
            <div
              key={which}
              class={styles.limit}
              style={{ left: `${value * 10}%` }}
              role="slider"
              tabIndex={0}
              aria-label={name}
              aria-valuemin={Math.round(low)}
              aria-valuemax={Math.round(high)}
              aria-valuenow={Math.round(limit)}
              aria-valuetext={`${name}, value ${value.toFixed(1)}`}
              onKeyDown={(event) => keys.keyDown(which, event)}
              onBlur={keys.settle}
            >
              <span class={styles.said} aria-hidden="true">
                {value.toFixed(1)}
              </span>
            </div>
          );
        })}
      </div>
      <ValueScale bands={bands} current={new Set(only === null ? [] : [only])} onBand={onBand} />
    </div>
  );
}
