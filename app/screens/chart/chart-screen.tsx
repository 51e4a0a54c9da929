import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { cssColour } from '../../core/colour/lab.ts';
import {
  type ChartDark,
  type ChartPair,
  type ChartSwatch,
  chartStrengths,
  type MixingChart,
  type ChartSwatch as Swatch,
} from '../../core/paint/mix.ts';
import { surfaceOf, type WashPlan } from '../../core/plan/plan.ts';
import { consistencySign, partsInNumbers, partsInWords } from '../../core/words/paint/mix-words.ts';
import { valueInWords } from '../../core/words/values.ts';
import type { PaintCalls } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo } from '../../state/router.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { Waiting } from '../../ui/layout/waiting.tsx';
import { PaintCautions } from '../../ui/mixes/cautions.tsx';
import styles from './chart-screen.module.css';

interface ChartScreenProps {
  studio: Studio;
  calls: PaintCalls;
  paintingId: string;
}

/** What the paints of the palette make of each other: on screen, and as a page to print and paint. */
export function ChartScreen({ studio, calls, paintingId }: ChartScreenProps) {
  const plan = studio.plan.value;
  const { chart, problem } = useChart(calls, plan);
  const chosen = useSignal<ChartSwatch | null>(null);
  const nameOf = (id: string): string => plan?.palette.find((entry) => entry.id === id)?.name ?? id;
  const choose = (swatch: ChartSwatch): void => {
    chosen.value = chosen.value === swatch ? null : swatch;
  };
  const shown = { chosen: chosen.value, onChoose: choose, nameOf };
  return (
    <PageLayout
      name="chart"
      class={styles.page}
      top={<TopBar title="Mixing chart" back="Wash plan" backTo={linkTo(paintingId, 'plan')} />}
    >
      {problem && <p role="alert">{problem}</p>}
      {!plan && <Waiting studio={studio} />}
      {plan && plan.optics.length < 2 && (
        <p>There is one paint in this palette: nothing to mix. Water alone makes its values.</p>
      )}
      {chart && chart.pairs.length > 0 && (
        <>
          <div class={styles.intro}>
            <p>
              Every pair of the palette, each in three mixes and three strengths. Touch one for its
              parts.
            </p>
            <Button onClick={() => window.print()}>Print it to paint</Button>
          </div>
          <p class={styles.onPaper}>
            Mixing chart. Paint each empty box as its neighbour says, let it dry, and trust your own
            boxes: printed colours are only near.
          </p>
          <ChartPairs pairs={chart.pairs} {...shown} />
          <ChartDarks darks={chart.darks} {...shown} />
          <SwatchWords swatch={chosen.value} nameOf={nameOf} />
          {plan && <PaintCautions plan={plan} />}
        </>
      )}
    </PageLayout>
  );
}

/** What a row of the chart is called, by its place. */
const rowWords = (names: readonly [string, string]): readonly string[] => [
  `mostly ${names[0]}, 3\u00a0:\u00a01`,
  'half and half, 1\u00a0:\u00a01',
  `mostly ${names[1]}, 1\u00a0:\u00a03`,
];

/** Every pair: three mixes one under the other, from watery to strong. */
function ChartPairs({ pairs, ...shown }: ChartProps & { pairs: readonly ChartPair[] }) {
  const density = (['few', 'two', 'three', 'close'] as const)[
    [6, 10, 15].filter((most) => pairs.length > most).length
  ];
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
              {chartStrengths.map((strength) => (
                <span key={strength}>{strength}</span>
              ))}
            </p>
            {ratios.map((row, n) => (
              <div key={rowWords(names)[n]}>
                <p class={styles.ratio}>{rowWords(names)[n]}</p>
                <div class={styles.row}>
                  {row.map((swatch) => (
                    <SwatchCell key={swatch.load} swatch={swatch} {...shown} />
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

/** The darkest mixes, each with whether it leans warm or cool. */
function ChartDarks({ darks, ...shown }: ChartProps & { darks: readonly ChartDark[] }) {
  return (
    <section class={styles.darks} aria-label="Darks">
      <h2 class={styles.heading}>The darks</h2>
      {darks.length === 0 && <p>No two of these paints make a real dark: add a deep one.</p>}
      <ul class={styles.darkList}>
        {darks.map((dark) => (
          <li key={JSON.stringify(dark.parts)} class={styles.dark}>
            <SwatchCell swatch={dark} {...shown} />
            <span class={styles.ratio}>
              {dark.tint}: {partsInWords(dark.parts, shown.nameOf)}, {partsInNumbers(dark.parts)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface ChartProps {
  chosen: Swatch | null;
  onChoose: (swatch: Swatch) => void;
  nameOf: (paint: string) => string;
}

/** One colour of the chart, to touch; in print an empty box beside it to paint. */
function SwatchCell({ swatch, chosen, onChoose, nameOf }: ChartProps & { swatch: Swatch }) {
  const { parts, consistency, dry } = swatch;
  return (
    <span class={styles.cell}>
      <button
        type="button"
        class={styles.swatch}
        style={{ background: cssColour(dry) }}
        aria-pressed={swatch === chosen}
        aria-label={`${partsInWords(parts, nameOf)}, ${consistency}, ${valueInWords(dry[0])}`}
        onClick={() => onChoose(swatch)}
      />
      <span class={styles.box} aria-hidden="true" />
    </span>
  );
}

interface SwatchWordsProps {
  swatch: ChartSwatch | null;
  nameOf: (paint: string) => string;
}

/** The mix she touched, large, with parts and strength; stays in sight while she scrolls. */
function SwatchWords({ swatch, nameOf }: SwatchWordsProps) {
  return (
    <div class={styles.words} role="status">
      {swatch && (
        <p class={styles.found}>
          <span class={styles.large} style={{ background: cssColour(swatch.dry) }} />
          <span>
            <strong class={styles.mix}>{partsInWords(swatch.parts, nameOf)}</strong> (
            {partsInNumbers(swatch.parts)}), as {swatch.consistency}:{' '}
            {consistencySign[swatch.consistency]}. Dries to {valueInWords(swatch.dry[0])}.
          </span>
        </p>
      )}
    </div>
  );
}

interface FoundChart {
  readonly chart: MixingChart | null;
  /** A sentence for the painter; null while all is well. */
  readonly problem: string | null;
}

/** The chart of a plan's palette; null until it is there. */
function useChart(calls: PaintCalls, plan: WashPlan | null): FoundChart {
  const foundChart = useSignal<FoundChart>({ chart: null, problem: null });
  useEffect(() => {
    if (!plan) return;
    const controller = new AbortController();
    calls.mixingChart(controller.signal, plan.optics, surfaceOf(plan)).then(
      (chart) => {
        if (!controller.signal.aborted) foundChart.value = { chart, problem: null };
      },
      () => {
        if (controller.signal.aborted) return;
        foundChart.value = {
          chart: null,
          problem: 'The chart could not be worked out. Go back to the wash plan and try again.',
        };
      },
    );
    return () => controller.abort();
  }, [calls, plan]);
  return foundChart.value;
}
