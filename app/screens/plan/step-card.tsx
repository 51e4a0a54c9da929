import { bandWord } from '../../model/band-words.ts';
import { familyNameIn } from '../../model/family-name-in.ts';
import { minutesInWords } from '../../model/minutes-in-words.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import type { Reading } from '../../model/reading.ts';
import { plannedLightness } from '../../model/tone-range.ts';
import type { Step, WashPlan } from '../../model/wash-plan.ts';
import { wetnessSign } from '../../model/wetness.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import { Consequence } from '../common/consequence.tsx';
import { LayOutList } from '../common/lay-out-list.tsx';
import { amountsFor, PuddleList } from '../common/puddle-list.tsx';
import { TouchList } from '../common/touch-list.tsx';
import { ValueScale } from '../common/value-scale.tsx';
import styles from './step-card.module.css';

interface StepCardProps {
  plan: WashPlan;
  reading: Reading;
  step: Step;
  calls: PaintCalls;
}

/** One step in full: what, on what paper, with which puddles, how long, what to look for. */
export function StepCard({ plan, reading, step, calls }: StepCardProps) {
  const mixes = plan.mixes.filter(({ id }) => step.mixes.includes(id));
  const familyName = familyNameIn(plan, reading);
  const aims = step.bands.map((band) => {
    const tones = reading.bands[band - 1]?.tones;
    const planned = tones && valueOfLightness(plannedLightness(plan.range, tones)); // with these paints
    const value = planned === undefined ? '' : ` (value ${planned.toFixed(1)})`;
    return `${bandWord(band, reading.bands.length)}${value}`;
  });
  return (
    <article class={styles.card}>
      <h2 class={styles.title}>
        {step.n}. {step.title}
      </h2>
      <p class={styles.prompt}>{step.prompt}</p>
      <Consequence step={step} />
      {step.watch && <p>{step.watch}</p>}
      {step.soften && <p>{step.soften}</p>}
      <TouchList step={step} />
      {step.bands.length > 0 && <ValueScale bands={reading.bands} current={new Set(step.bands)} />}
      <dl class={styles.facts}>
        {aims.length > 0 && (
          <>
            <dt>For</dt>
            <dd>{aims.join(', ')}</dd>
          </>
        )}
        <dt>Paper</dt>
        <dd>
          {step.paper}: {wetnessSign[step.paper]}
        </dd>
        {step.technique !== 'none' && (
          <>
            <dt>How</dt>
            <dd>{step.technique}</dd>
          </>
        )}
        {step.paintMinutes[1] > 0 && (
          <>
            <dt>Takes</dt>
            <dd>{minutesInWords(step.paintMinutes)}</dd>
          </>
        )}
        {step.dryMinutes[1] > 0 && (
          <>
            <dt>Dries</dt>
            <dd>
              shine gone after {minutesInWords(step.shineMinutes)}, bone dry after{' '}
              {minutesInWords(step.dryMinutes)}: {wetnessSign['bone dry']}
            </dd>
          </>
        )}
      </dl>
      {step.kind === 'prepare' && <LayOutList plan={plan} />}
      {mixes.length > 0 && (
        <PuddleList
          plan={plan}
          mixes={mixes}
          familyName={familyName}
          calls={calls}
          sheet={amountsFor(step, reading)}
          strongest={step.kind === 'accents'}
        />
      )}
      {step.cautions.map((caution) => (
        <p key={caution} class={styles.caution}>
          {caution}
        </p>
      ))}
    </article>
  );
}
