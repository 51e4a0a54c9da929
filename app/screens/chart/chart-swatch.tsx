import { cssColour } from '../../drawing/css-colour.ts';
import type { ChartSwatch as Swatch } from '../../model/mixing-chart.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import { partsInWords } from '../../model/parts-in-words.ts';
import styles from './chart-screen.module.css';

export interface ChartProps {
  chosen: Swatch | null;
  onChoose: (swatch: Swatch) => void;
  nameOf: (paint: string) => string;
}

/** One colour of the chart, to touch; in print an empty box beside it to paint. */
export function ChartSwatch({ swatch, chosen, onChoose, nameOf }: ChartProps & { swatch: Swatch }) {
  const { parts, consistency, dry } = swatch;
  return (
    <span class={styles.cell}>
      <button
        type="button"
        class={styles.swatch}
        style={{ background: cssColour(dry) }}
        aria-pressed={swatch === chosen}
        aria-label={`${partsInWords(parts, nameOf)}, ${consistency}, value ${valueOfLightness(dry[0]).toFixed(1)}`}
        onClick={() => onChoose(swatch)}
      />
      <span class={styles.box} aria-hidden="true" />
    </span>
  );
}
