import { useComputed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Easel } from '../../state/easel.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import { linkTo } from '../../state/route.ts';
import { Button, buttonClass } from '../common/button.tsx';
import { Picture } from '../common/picture.tsx';
import { PuddleList } from '../common/puddle-list.tsx';
import { softOf } from '../common/soft-of.ts';
import { type StepView, stepLayer, stepLayers } from '../common/step-layers.ts';
import { TopBar } from '../common/top-bar.tsx';
import { ValueScale } from '../common/value-scale.tsx';
import { Standstill } from '../common/waiting.tsx';
import { Workplace } from '../common/workplace.tsx';
import { EaselActions } from './easel-actions.tsx';
import { EaselClock } from './easel-clock.tsx';
import styles from './easel-screen.module.css';
import { useEaselKeys } from './use-easel-keys.ts';

interface EaselScreenProps {
  easel: Easel;
  calls: PaintCalls;
  paintingId: string;
}

/** One step at a time, readable at arm's length: the picture, the sentence, the puddles, the clock. */
export function EaselScreen({ easel, calls, paintingId }: EaselScreenProps) {
  const view = useSignal<StepView>('where');
  const grey = useSignal(false);
  const toggleGrey = (): void => {
    grey.value = !grey.value;
  };
  useEaselKeys(easel, toggleGrey);
  useEffect(() => {
    void easel.open(paintingId);
    return easel.leave;
  }, [easel, paintingId]);
  const step = easel.step.value;
  const desk = easel.desk.value;
  const soft = useComputed(() => {
    const at = easel.desk.value;
    return at && softOf(at.seen.slotMap, at.seen.reading.raster, at.edges);
  });
  const layers = useComputed(() => {
    const now = easel.step.value;
    const at = easel.desk.value;
    return at && now && soft.value ? stepLayers(at.seen, now, soft.value) : {};
  });

  if (!desk || !step)
    return (
      <Workplace
        name="easel"
        top={<TopBar title="Easel" back="Wash plan" backTo={linkTo(paintingId, 'plan')} />}
        picture={<Standstill problem={easel.problem.value} onAgain={easel.again} />}
        panel={null}
        actions={null}
      />
    );

  const { plan, seen } = desk;
  const finished = easel.session.value.phase === 'finished';
  // A step that touches nothing in particular has no 'where' to show.
  const placeless: StepView =
    step.kind === 'dry' || step.kind === 'last-look' ? 'sheet' : 'reference';
  const hasPlace = step.slots.length > 0 && step.kind !== 'last-look';
  const shown = view.value === 'where' && !hasPlace ? placeless : view.value;
  const mixes = plan.mixes.filter(({ id }) => step.mixes.includes(id));
  const look = (next: StepView, text: string) => (
    <Button aria-pressed={shown === next} onClick={() => (view.value = next)}>
      {text}
    </Button>
  );
  return (
    <Workplace
      name="easel"
      top={
        <>
          <a class={buttonClass('quiet')} href={linkTo(paintingId, 'plan')}>
            Plan
          </a>
          <h1 class={styles.place}>
            {finished ? 'Finished' : `${step.n} of ${plan.steps.length}: ${step.title}`}
          </h1>
          <span class={styles.saved} role="status">
            {easel.savedWord.value}
          </span>
        </>
      }
      picture={
        <Picture
          label={`${step.title}: ${viewWords[shown]}`}
          tapLabel={grey.value ? 'Tap for colour' : 'Tap for grey'}
          size={seen.reading.raster}
          layers={layers.value}
          show={stepLayer(shown, grey.value)}
          ahead={['reference', 'reference-grey', stepLayer(shown, !grey.value)]}
          onTap={toggleGrey}
        />
      }
      panel={
        <div class={styles.panel}>
          {easel.problem.value && <p role="alert">{easel.problem.value}</p>}
          <p class={styles.prompt} data-testid="prompt">
            {finished
              ? 'Finished. What you did, and how long it took, stands in the record.'
              : step.prompt}
          </p>
          {!finished && <EaselClock easel={easel} step={step} />}
          {mixes.length > 0 && (
            <PuddleList plan={plan} mixes={mixes} familyName={desk.familyName} calls={calls} />
          )}
          {step.watch && <p>{step.watch}</p>}
          {step.soften && <p>{step.soften}</p>}
          <div class={styles.views}>
            {hasPlace && look('where', 'Where')}
            {look('sheet', 'How it should look now')}
            {look('reference', 'Reference')}
          </div>
          <ValueScale
            bands={seen.reading.bands}
            done={easel.bandsDone.value}
            current={new Set(step.bands)}
          />
          {step.cautions.map((caution) => (
            <p key={caution} class={styles.caution}>
              {caution}
            </p>
          ))}
          {easel.screenStaysOn.value === false && (
            <p class={styles.caution}>
              This browser can't keep the screen on: the clock stays right, but the screen may go
              dark.
            </p>
          )}
        </div>
      }
      actions={<EaselActions easel={easel} paintingId={paintingId} />}
    />
  );
}

const viewWords: Record<StepView, string> = {
  where: 'where to paint',
  sheet: 'how it should look now',
  reference: 'the reference',
};
