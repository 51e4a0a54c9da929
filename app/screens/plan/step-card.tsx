import { valueOfLightness } from '../../core/colour/lightness.ts';
import { markOfStep, ownMarks } from '../../core/plan/details/place-marks.ts';
import { familyNameIn } from '../../core/plan/family-name-in.ts';
import { passageOf, type Step, type WashPlan } from '../../core/plan/plan.ts';
import { bandsWithin, type Reading } from '../../core/reading/reading.ts';
import { onTheSheet } from '../../core/reading/tone-range.ts';
import { wetnessSign } from '../../core/words/drying/drying-words.ts';
import { minutesInWords } from '../../core/words/minutes.ts';
import { brushesInWords } from '../../core/words/plan/tools.ts';
import { words } from '../../core/words/plan/words.ts';
import { bandWord } from '../../core/words/reading-words.ts';
import { valueInFigures } from '../../core/words/values.ts';
import type { PaintCalls } from '../../state/painting/screen-calls.ts';
import { ValueScale } from '../../ui/controls/value-scale.tsx';
import { Cautions, PaintCautions } from '../../ui/mixes/cautions.tsx';
import { amountsFor, PuddleList } from '../../ui/mixes/puddle-list.tsx';
import { PuddleRow } from '../../ui/mixes/puddle-row.tsx';
import { Consequence, LayOutList, TouchList } from '../../ui/mixes/step-parts.tsx';
import styles from './step-card.module.css';

interface StepCardProps {
  plan: WashPlan;
  reading: Reading;
  step: Step;
  calls: PaintCalls;
}

/** What is to be found behind the fold of a step, where it is more than details. */
const moreOf: Partial<Record<Step['kind'], string>> = {
  prepare: 'What to lay out, and more',
  puddles: 'How much of each, and more',
};

/** One step: what to do, from which puddles, with which brush, on what paper, how long; all else after a touch. */
export function StepCard({ plan, reading, step, calls }: StepCardProps) {
  const mixes = plan.mixes.filter(({ id }) => step.mixes.includes(id));
  const familyName = familyNameIn(plan, reading);
  const mixing = step.kind === 'puddles';
  const puddles = mixes.length > 0 && (
    <PuddleList
      plan={plan}
      mixes={mixes}
      familyName={familyName}
      calls={calls}
      sheet={amountsFor(step, reading)}
      strongest={markOfStep[step.kind] !== undefined}
    />
  );
  return (
    <article class="stack">
      <h2 class={styles.title}>
        {step.n}. {words(step.title)}
      </h2>
      <p class={styles.prompt}>{words(step.prompt)}</p>
      <Cautions said={step.cautions} />
      <Consequence step={step} />
      <PuddleRow mixes={mixes} marks={ownMarks(step)} familyName={familyName} plan={plan} />
      {mixing && <PaintCautions plan={plan} />}
      <BrushLine step={step} />
      <p class="quiet">{stepInShort(step, plan)}</p>
      <details key={step.key}>
        <summary class={styles.more}>{moreOf[step.kind] ?? 'More on this step'}</summary>
        <div class="stack">
          {step.kind === 'prepare' && <LayOutList plan={plan} />}
          <StepDetails plan={plan} reading={reading} step={step} />
          {puddles}
        </div>
      </details>
    </article>
  );
}

/** The brushes; where a wash is painted in two ways, the main one of each area. */
function BrushLine({ step: { areas, brush } }: Pick<StepCardProps, 'step'>) {
  if (!brush) return null;
  const brushes = areas
    ? areas.map((area) => `for ${words(area.name)} ${brushesInWords(area.brush)[0]}`)
    : brushesInWords(brush);
  return <p>Brush: {brushes.join('; ')}.</p>;
}

/** The paper, the time at it, and the wait after it, in one line; of a drying check what it waits for. */
function stepInShort(step: Step, { steps }: Pick<WashPlan, 'steps'>): string {
  const { paper, areas, paintMinutes, dryMinutes, kind } = step;
  const wet = steps.slice(0, steps.indexOf(step)).findLast((each) => each.dryMinutes[1] > 0);
  if (kind === 'dry' && wet)
    return `Bone dry ${minutesInWords(wet.dryMinutes)} after step ${wet.n}, ${words(wet.title).toLowerCase()}.`;
  const takes = paintMinutes[1] > 0 ? ` Takes ${minutesInWords(paintMinutes)}.` : '';
  const dries = dryMinutes[1] > 0 ? ` Bone dry after ${minutesInWords(dryMinutes)}.` : '';
  return `Paper: ${areas ? 'wetted, then dry' : paper}.${takes}${dries}`;
}

/** What else is to be known of a step: what to watch, how it is done, its values, what the paper looks like. */
function StepDetails({ plan, reading, step }: Omit<StepCardProps, 'calls'>) {
  const bands = bandsWithin(reading, passageOf(step, plan));
  const aims = step.bands.map((band) => {
    const own = bands[band - 1]?.lightness;
    const planned = own !== undefined && valueOfLightness(onTheSheet(plan.range, own)); // with these paints
    const value = planned === false ? '' : ` (value ${valueInFigures(planned)})`;
    return `${bandWord(band, bands.length)}${value}`;
  });
  return (
    <>
      {step.watch.length > 0 && <p>{words(step.watch)}</p>}
      {step.soften.length > 0 && <p>{words(step.soften)}</p>}
      <TouchList step={step} />
      {step.notes?.map(words).map((note) => (
        <p key={note} class={styles.caution}>
          {note}
        </p>
      ))}
      {step.bands.length > 0 && <ValueScale bands={bands} current={new Set(step.bands)} />}
      <dl class={styles.facts}>
        {aims.length > 0 && (
          <>
            <dt>For</dt>
            <dd>{aims.join(', ')}</dd>
          </>
        )}
        {!step.areas && (
          <>
            <dt>Paper</dt>
            <dd>
              {step.paper}: {wetnessSign[step.paper]}
            </dd>
          </>
        )}
        {step.technique !== 'none' && !step.areas && (
          <>
            <dt>How</dt>
            <dd>{step.technique}</dd>
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
    </>
  );
}
