import { cssColour } from '../../drawing/css-colour.ts';
import { consistencySign } from '../../model/consistency.ts';
import type { ChartSwatch } from '../../model/mixing-chart.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import { partsInNumbers, partsInWords } from '../../model/parts-in-words.ts';
import styles from './chart-screen.module.css';

interface SwatchWordsProps {
  swatch: ChartSwatch | null;
  nameOf: (paint: string) => string;
}

/** The mix she touched, large, with parts and strength; stays in sight while she scrolls. */
export function SwatchWords({ swatch, nameOf }: SwatchWordsProps) {
  return (
    <div class={styles.words} role="status">
      {swatch && (
        <p class={styles.found}>
          <span class={styles.large} style={{ background: cssColour(swatch.dry) }} />
          <span>
            <strong class={styles.mix}>{partsInWords(swatch.parts, nameOf)}</strong> (
            {partsInNumbers(swatch.parts)}), as {swatch.consistency}:{' '}
            {consistencySign[swatch.consistency]}. Dries to value{' '}
            {valueOfLightness(swatch.dry[0]).toFixed(1)}.
          </span>
        </p>
      )}
    </div>
  );
}
