import { cssGrey } from '../../core/colour/lab.ts';
import { valueOfLightness } from '../../core/colour/lightness.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { bandWord } from '../../core/words/reading-words.ts';
import { valueInFigures } from '../../core/words/values.ts';
import { ValueScale } from '../../ui/controls/value-scale.tsx';
import { bandsByLimits, limitsOf, roomOfLimit, shareBelow } from './band-limits.ts';
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

/**
 * A value strip as one is painted at the edge of a study, black at the left: a step for each of the few values, as
 * wide as its share of the picture. Its borders are dragged. Under it the value scale, with the names of the steps.
 */
export function ValueStrip({ reading, moved, only, onBand, onMove, onSettle }: ValueStripProps) {
  const { histogram } = reading.lightness;
  const limits = moved ?? limitsOf(reading.bands);
  const handlers = useLimitDrag({ histogram, limits, onMove, onSettle });
  const keys = useLimitKeys(limits, onMove, onSettle);
  const count = limits.length + 1;
  const bands = bandsByLimits(histogram, limits).map((band) => ({
    ...band,
    value: valueOfLightness(band.lightness),
  }));
  const places = [0, ...limits.map((limit) => shareBelow(histogram, limit)), 1];
  return (
    <div class={styles.strip}>
      <div class={styles.track} data-testid="limits" {...handlers}>
        {[...bands].reverse().map(({ band, lightness }, step) => {
          const [from = 0, to = 1] = places.slice(step);
          return (
            <span
              key={band}
              class={styles.step}
              data-current={band === only || undefined}
              style={{
                left: `${100 * from}%`,
                width: `${100 * (to - from)}%`,
                background: cssGrey(lightness),
              }}
            />
          );
        })}
        {limits.map((limit, which) => {
          const value = valueOfLightness(limit);
          const [light, dark] = [count - 1 - which, count - which];
          const name = `limit between ${bandWord(light, count)} and ${bandWord(dark, count)}`;
          const [low, high] = roomOfLimit(limits, which);
          return (
            <div
              key={which}
              class={styles.limit}
              style={{ left: `${100 * (places[which + 1] ?? 0)}%` }}
              role="slider"
              tabIndex={0}
              aria-label={name}
              aria-valuemin={Math.round(low)}
              aria-valuemax={Math.round(high)}
              aria-valuenow={Math.round(limit)}
              aria-valuetext={`${name}, value ${valueInFigures(value)}`}
              onKeyDown={(event) => keys.keyDown(which, event)}
              onBlur={keys.settle}
            >
              <span class={styles.said} aria-hidden="true">
                {valueInFigures(value)}
              </span>
            </div>
          );
        })}
      </div>
      <ValueScale bands={bands} current={new Set(only === null ? [] : [only])} onBand={onBand} />
      {reading.subjectBands && (
        <p>
          The subject is split by its own tones. Move a border here, and it holds for subject and
          background alike.
        </p>
      )}
    </div>
  );
}
