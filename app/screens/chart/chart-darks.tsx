import type { ChartDark } from '../../model/mixing-chart.ts';
import { partsInNumbers, partsInWords } from '../../model/parts-in-words.ts';
import styles from './chart-screen.module.css';
import { type ChartProps, ChartSwatch } from './chart-swatch.tsx';

/** The darkest mixes, each with whether it leans warm or cool. */
export function ChartDarks({ darks, ...shown }: ChartProps & { darks: readonly ChartDark[] }) {
  return (
    <section class={styles.darks} aria-label="Darks">
      <h2 class={styles.heading}>The darks</h2>
      {darks.length === 0 && <p>No two of these paints make a real dark: add a deep one.</p>}
      <ul class={styles.darkList}>
        {darks.map((dark) => (
          <li key={JSON.stringify(dark.parts)} class={styles.dark}>
            <ChartSwatch swatch={dark} {...shown} />
            <span class={styles.ratio}>
              {partsInWords(dark.parts, shown.nameOf)}, {partsInNumbers(dark.parts)}: {dark.tint}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
