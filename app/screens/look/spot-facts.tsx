import { bandWord } from '../../model/band-words.ts';
import type { Lab } from '../../model/lab.ts';
import { misleadingBy } from '../../model/looks-lighter-by.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import { nearestFamily } from '../../model/nearest-family.ts';
import type { Reading } from '../../model/reading.ts';
import styles from './spot-card.module.css';

/** 'half a value', '1½ values': L* in steps of Munsell value, about 10 L* each. */
function stepsInWords(lightness: number): string {
  const halves = Math.max(1, Math.round(lightness / 5));
  if (halves === 1) return 'half a value';
  return `${Math.floor(halves / 2)}${halves % 2 ? '½' : ''} ${halves > 2 ? 'values' : 'value'}`;
}

interface SpotFactsProps {
  reading: Reading;
  lab: Lab;
  name?: string;
}

/** Value, band and colour of a spot in words; a hint where a strong colour misleads the eye. */
export function SpotFacts({ reading, lab, name }: SpotFactsProps) {
  const { bands, families } = reading;
  const band = bands.find(({ from }) => lab[0] >= from) ?? bands.at(-1);
  const family = nearestFamily(families, lab);
  const by = misleadingBy(lab);
  const value = `value ${valueOfLightness(lab[0]).toFixed(1)}`;
  return (
    <div>
      <p class={name ? undefined : styles.lead}>
        {name ? `${name}: ${value}` : value.replace('v', 'V')}
        {band && `, ${bandWord(band.band, bands.length)}`}
      </p>
      <p class={name ? styles.quiet : undefined}>
        {family && `${family.name}, `}L* {lab[0].toFixed(0)}
      </p>
      {by !== null && (
        <p class={styles.quiet}>
          It looks about {stepsInWords(by)} lighter than it is: strong reds and blues do. Trust the
          grey.
        </p>
      )}
    </div>
  );
}
