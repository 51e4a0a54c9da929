import { cssGrey } from '../../drawing/css-colour.ts';
import { bandWord } from '../../model/band-words.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import type { Band } from '../../model/reading.ts';
import styles from './plan-sheet.module.css';

/** Every band by its grey, its word and the value it is to have on the sheet. */
export function PlanBands({ bands }: { bands: readonly Band[] }) {
  return (
    <ul class={styles.bands} aria-label="Values, 0 is black, 10 is white">
      {bands.map(({ band, plannedLightness }) => (
        <li key={band} class={styles.band}>
          <Grey lightness={plannedLightness} />
          {bandWord(band, bands.length)}, value {valueOfLightness(plannedLightness).toFixed(1)}
        </li>
      ))}
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
