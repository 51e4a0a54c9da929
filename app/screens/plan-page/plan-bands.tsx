import { cssGrey } from '../../drawing/css-colour.ts';
import { bandWord } from '../../model/band-words.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import type { Band, ToneRange } from '../../model/reading.ts';
import { plannedLightness } from '../../model/tone-range.ts';
import styles from './plan-sheet.module.css';

interface PlanBandsProps {
  bands: readonly Band[];
  /** What the plan's own paints reach: the reading knows only those of the whole box. */
  range: ToneRange;
}

/** Every band by its grey, its word and the value it is to have on the sheet. */
export function PlanBands({ bands, range }: PlanBandsProps) {
  return (
    <ul class={styles.bands} aria-label="Values, 0 is black, 10 is white">
      {bands.map(({ band, tones }) => {
        const lightness = plannedLightness(range, tones);
        return (
          <li key={band} class={styles.band}>
            <Grey lightness={lightness} />
            {bandWord(band, bands.length)}, value {valueOfLightness(lightness).toFixed(1)}
          </li>
        );
      })}
    </ul>
  );
}

/** A square of grey that is printed even where a browser leaves out backgrounds. */
function Grey({ lightness }: { lightness: number }) {
  return (
    <svg class={styles.square} viewBox="0 0 1 1" aria-hidden="true">
      <rect width="1" height="1" fill={cssGrey(lightness)} stroke="#000" stroke-width="0.03" />
    </svg>
  );
}
