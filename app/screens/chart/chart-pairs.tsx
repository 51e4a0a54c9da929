import { consistencyOf } from '../../model/consistency.ts';
import { type ChartPair, chartLoads } from '../../model/mixing-chart.ts';
import styles from './chart-screen.module.css';
import { type ChartProps, ChartSwatch } from './chart-swatch.tsx';

/** What a row of the chart is called, by its place. */
const rowWords = (names: readonly [string, string]): readonly string[] => [
  `mostly ${names[0]}, 3 : 1`,
  'half and half, 1 : 1',
  `mostly ${names[1]}, 1 : 3`,
];

/** Every pair: three mixes one under the other, from watery to strong. */
export function ChartPairs({ pairs, ...shown }: ChartProps & { pairs: readonly ChartPair[] }) {
  const density = pairs.length > 15 ? 'close' : pairs.length > 10 ? 'three' : 'two';
  return (
    <section class={styles.pairs} data-density={density} aria-label="Pairs">
      {pairs.map(({ paints, ratios }) => {
        const names = [shown.nameOf(paints[0]), shown.nameOf(paints[1])] as const;
        return (
          <article key={paints.join()} class={styles.pair}>
            <h2 class={styles.names}>
              {names[0]} and {names[1]}
            </h2>
            <p class={styles.strengths} aria-hidden="true">
              {chartLoads.map((load) => (
                <span key={load}>{consistencyOf(load)}</span>
              ))}
            </p>
            {ratios.map((row, n) => (
              <div key={rowWords(names)[n]}>
                <p class={styles.ratio}>{rowWords(names)[n]}</p>
                <div class={styles.row}>
                  {row.map((swatch) => (
                    <ChartSwatch key={swatch.load} swatch={swatch} {...shown} />
                  ))}
                </div>
              </div>
            ))}
          </article>
        );
      })}
    </section>
  );
}
