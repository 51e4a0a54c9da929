import { useSignal } from '@preact/signals';
import type { ChartSwatch } from '../../model/mixing-chart.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import { linkTo } from '../../state/route.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import { TopBar } from '../common/top-bar.tsx';
import { Waiting } from '../common/waiting.tsx';
import { ChartDarks } from './chart-darks.tsx';
import { ChartPairs } from './chart-pairs.tsx';
import styles from './chart-screen.module.css';
import { SwatchWords } from './swatch-words.tsx';
import { useChart } from './use-chart.ts';

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
    <main class={styles.page} data-screen="chart">
      <header class={styles.top}>
        <TopBar title="Mixing chart" back="Wash plan" backTo={linkTo(paintingId, 'plan')} />
      </header>
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
        </>
      )}
    </main>
  );
}
