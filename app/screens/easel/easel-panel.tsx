import { useLayoutEffect, useRef } from 'preact/hooks';
import { familyNameIn } from '../../model/family-name-in.ts';
import { cautionsDue } from '../../model/session/cautions-due.ts';
import type { Step } from '../../model/wash-plan.ts';
import type { Desk, Easel } from '../../state/easel.ts';
import type { EaselSenses } from '../../state/easel-senses.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import { Consequence } from '../common/consequence.tsx';
import { LayOutList } from '../common/lay-out-list.tsx';
import { amountsFor, PuddleList } from '../common/puddle-list.tsx';
import { ToolLine } from '../common/tool-line.tsx';
import { TouchList } from '../common/touch-list.tsx';
import { ValueScale } from '../common/value-scale.tsx';
import { EaselClock } from './easel-clock.tsx';
import styles from './easel-panel.module.css';
import { EaselPrompt } from './easel-prompt.tsx';
import { MeanwhileList } from './meanwhile-list.tsx';
import { OpenTime } from './open-time.tsx';
import { ScrapCompare } from './scrap-compare.tsx';
import { SoundOffer } from './sound-offer.tsx';
import type { EaselViewState } from './use-easel-view.ts';

interface EaselPanelProps {
  easel: Easel;
  senses: EaselSenses;
  calls: PaintCalls;
  desk: Desk;
  step: Step;
  view: EaselViewState;
}

/** The sentence first, then the clock, how it is done, the puddles, and what to watch. */
export function EaselPanel({ easel, senses, calls, desk, step, view }: EaselPanelProps) {
  const { plan, seen } = desk;
  const { phase, stepIndex } = easel.session.value;
  const finished = phase === 'finished';
  // Before she starts she takes up the brush; once she paints, what to do with it comes first.
  const painting = phase === 'painting';
  const mixes = plan.mixes.filter(({ id }) => step.mixes.includes(id));
  const top = useRef<HTMLDivElement>(null);
  const due = senses.cue.value?.kind === 'end';
  // Another step, or a clock that calls: its sentence and the clock are what she looks for.
  useLayoutEffect(() => {
    top.current?.parentElement?.scrollTo({ top: 0 });
  }, [step.key, due]);
  return (
    <div ref={top} class={styles.panel}>
      {easel.problem.value && <p role="alert">{easel.problem.value}</p>}
      <EaselPrompt easel={easel} step={step} />
      {!finished && step.kind === 'puddles' && (
        <ScrapCompare easel={easel} desk={desk} step={step} />
      )}
      {!finished && (
        <div class={styles.clock} data-due={due || undefined}>
          <div>
            <EaselClock easel={easel} step={step} />
            <OpenTime easel={easel} />
          </div>
          <SoundOffer senses={senses} />
        </div>
      )}
      {!finished &&
        cautionsDue(plan.steps, stepIndex).map((caution) => (
          <p key={caution} class={styles.caution}>
            {caution}
          </p>
        ))}
      <Consequence step={step} />
      {!finished && !painting && <ToolLine step={step} />}
      {!finished && <TouchList step={step} techniquesOnly />}
      {step.soften && <p>{step.soften}</p>}
      {step.soften && painting && (
        <p>‘Stroke is down’ starts the minutes in which its edge can still be softened.</p>
      )}
      {step.kind === 'prepare' && <LayOutList plan={plan} />}
      {mixes.length > 0 && (
        <PuddleList
          plan={plan}
          mixes={mixes}
          familyName={familyNameIn(plan, seen.reading)}
          calls={calls}
          sheet={painting ? undefined : amountsFor(step, seen.reading)}
          strongest={step.kind === 'accents'}
        />
      )}
      {step.watch && <p>{step.watch}</p>}
      {painting && <ToolLine step={step} />}
      {phase === 'drying' && (
        <MeanwhileList easel={easel} desk={desk} onEdges={() => view.look('edges')} />
      )}
      <ValueScale
        bands={seen.reading.bands}
        done={easel.bandsDone.value}
        current={view.shown.value === 'band' ? view.bands.value : new Set(step.bands)}
        onBand={view.pick}
      />
      {easel.screenStaysOn.value === false && (
        <p class={styles.caution}>
          This browser can't keep the screen on: the clock stays right, but the screen may go dark.
        </p>
      )}
    </div>
  );
}
