import { useMemo } from 'preact/hooks';
import { valueOfLightness } from '../../core/colour/lightness.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { bandWord } from '../../core/words/reading-words.ts';
import { ValueScale } from '../../ui/controls/value-scale.tsx';
import { bandsByLimits, limitsOf, roomOfLimit } from './band-limits.ts';
import { useLimitDrag, useLimitKeys } from './use-limit-drag.ts';
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

/** Where each bin begins along the scale, 0..100; bin = L* x 2.55. */
const places = Array.from({ length: 257 }, (_, bin) => 10 * valueOfLightness((bin - 0.5) / 2.55));

/** So many of the fullest bins may reach over the top: a burnt-out sky would flatten all the rest. */
const cutOff = 6;

/**
 * An SVG path over the value scale, 100 wide and 100 high: how much of the picture has each value.
 * Heights are square roots, so that small lights and darks are still seen beside large masses.
 */
function histogramShape(histogram: readonly number[]): string {
  const fullestFirst = [...histogram].sort((x, y) => y - x);
  const most = Math.sqrt(fullestFirst[cutOff] || fullestFirst[0] || 1);
  const tops = histogram.map((pixels, bin) => {
    const height = 100 - (100 * Math.min(most, Math.sqrt(pixels))) / most;
    return `V${height.toFixed(1)}H${(places[bin + 1] ?? 100).toFixed(2)}`;
  });
  return `M0 100${tops.join('')}V100Z`;
}
