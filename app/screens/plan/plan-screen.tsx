import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { madeFromInWords, tickedPaints } from '../../core/paint/own-box.ts';
import type { Step, WashPlan } from '../../core/plan/plan.ts';
import { isOfReach } from '../../core/plan/reach/plan-warning.ts';
import { words } from '../../core/words/plan/words.ts';
import { paintedCanvas, pngFile } from '../../drawing/png-file.ts';
import { fileWords } from '../../state/backup/hand-out.ts';
import type { OwnAirState } from '../../state/own-air.ts';
import type { HandedNeeds } from '../../state/painting/handed-plan.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { PaintCalls, PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { hashOf, linkTo } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { HandOutButtons } from '../../ui/controls/hand-out-buttons.tsx';
import { ScreenLayout, TopBar } from '../../ui/layout/screen-layout.tsx';
import { Waiting } from '../../ui/layout/waiting.tsx';
import { pictureLayers } from '../../ui/picture/picture-layers.ts';
import { useOutline } from '../../ui/picture/use-outline.ts';
import { useSoft, useStudyPicture } from '../../ui/picture/use-soft.ts';
import { ChangeStep } from './change-step.tsx';
import { EveningLabel, EveningPanel } from './evening-panel.tsx';
import { HandedOn } from './handed-on.tsx';
import { PassagesFold } from './passages-fold.tsx';
import styles from './plan-screen.module.css';
import { describeStage, StagePicture, type StageView, stageLayers } from './stage-picture.tsx';
import { StageStrip } from './stage-strip.tsx';
import { StepCard } from './step-card.tsx';

interface PlanScreenProps {
  studio: Studio;
  calls: PaintCalls & PictureCalls;
  ownAir: Pick<OwnAirState, 'air' | 'set'>;
  ownBox: Pick<OwnBoxState, 'box'>;
  /** Left out: nothing is asked of a plan that was handed on. */
  handed?: HandedNeeds;
  paintingId: string;
  /** A session of it lies on the easel. */
  begun?: boolean;
}

/** The order of work, step by step, each with the sheet as it should look after it. */
export function PlanScreen(props: PlanScreenProps) {
  const seen = props.studio.seen.value;
  const plan = props.studio.plan.value;
  if (seen && plan) return <ReadyPlan {...props} seen={seen} plan={plan} />;
  return (
    <ScreenLayout
      name="plan"
      top={<TopBar title="Wash plan" back="Values" backTo={linkTo(props.paintingId, 'look')} />}
      picture={<Waiting studio={props.studio} />}
      panel={<p>The washes are worked out from the values and your paints.</p>}
      actions={
        <Button look="main" large disabled>
          To the easel
        </Button>
      }
    />
  );
}

/** All of it stays paper, or the paints can't reach it: the plan says why and has no steps. */
function NothingToPaint({
  paintingId,
  seen,
  plan,
}: Pick<ReadyPlanProps, 'paintingId' | 'seen' | 'plan'>) {
  const layers = useMemo(() => {
    const { colour, grey } = pictureLayers(seen);
    return { photo: colour, 'photo-grey': grey };
  }, [seen]);
  return (
    <ScreenLayout
      name="plan"
      top={<TopBar title="Wash plan" back="Values" backTo={linkTo(paintingId, 'look')} />}
      picture={
        <StagePicture
          label="Your reference"
          size={seen.reading.raster}
          layers={layers}
          view="photo"
        />
      }
      panel={
        <p role="status">{words(plan.warnings[0]?.text) || 'There is nothing to paint here.'}</p>
      }
      actions={
        <a class={buttonClass('main', true)} href={linkTo(paintingId, 'paints')}>
          Look at the paints
        </a>
      }
    />
  );
}

interface ReadyPlanProps extends PlanScreenProps {
  seen: OpenedReading;
  plan: WashPlan;
}

function ReadyPlan(props: ReadyPlanProps) {
  const { calls, ownAir, ownBox, handed, paintingId, seen, plan, studio, begun } = props;
  const firstWash = plan.steps.findIndex((step) => step.kind === 'wash');
  const inView = useStepInView(plan.steps, Math.max(0, firstWash));
  const view = useSignal<StageView>('sheet');
  const step = plan.steps[inView.index];
  const soft = useSoft(calls, useStudyPicture(studio, seen));
  const stepIndex = step ? plan.steps.indexOf(step) : 0;
  const outline = useOutline(studio, calls, step?.kind === 'transfer');
  const layers = useMemo(
    () => stageLayers(seen, plan, stepIndex, { soft, outline }),
    [seen, plan, stepIndex, soft, outline],
  );
  const stageSaid = describeStage(plan, stepIndex, view.value);
  if (!step) return <NothingToPaint paintingId={paintingId} seen={seen} plan={plan} />;
  return (
    <ScreenLayout
      name="plan"
      top={
        <TopBar title="Wash plan" back="Values" backTo={linkTo(paintingId, 'look')}>
          <a class={buttonClass('quiet')} href={linkTo(paintingId, 'paints')}>
            Paints
          </a>
        </TopBar>
      }
      picture={
        <StagePicture
          label={`Step ${step.n}: ${words(step.title)}`}
          size={seen.reading.raster}
          layers={layers}
          view={view.value}
        />
      }
      panel={
        <div class={styles.panel}>
          {stepIndex === firstWash && !studio.painting.value?.handedOn && (
            <MadeFrom ownBox={ownBox} />
          )}
          {handed && <HandedOn {...{ studio, handed, plan }} />}
          <StageStrip seen={seen} plan={plan} current={stepIndex} onStep={inView.show} />
          <ChoiceRow
            label="What the picture shows"
            wraps
            choices={[
              ['sheet', 'After this step'],
              ['wet', 'Wet now'],
              ['changes', 'What changes'],
              ['where', 'Where'],
              ['reference', 'Photo'],
            ]}
            chosen={view.value}
            onChoose={(next) => {
              view.value = next;
            }}
          />
          {stageSaid && <p>{stageSaid}</p>}
          <EveningLabel plan={plan} step={step} />
          <StepCard plan={plan} reading={seen.reading} step={step} calls={calls} />
          {(stepIndex === Math.max(0, firstWash) || plan.warnings[0]?.step === step.key) && (
            <ReachList plan={plan} />
          )}
          <ChangeStep studio={studio} plan={plan} reading={seen.reading} step={step} />
          <EveningPanel plan={plan} studio={studio} ownAir={ownAir} />
          <PassagesFold plan={plan} studio={studio} />
          <a class={buttonClass()} href={linkTo(paintingId, 'chart')}>
            Mixing chart of these paints
          </a>
          <a class={buttonClass()} href={linkTo(paintingId, 'drawing')}>
            Drawing to transfer
          </a>
          <a class={buttonClass()} href={linkTo(paintingId, 'plan-page')}>
            Plan on one page
          </a>
          <HandOutButtons
            what="this picture"
            make={() => {
              const layer = layers[view.value];
              const words = fileWords(studio.painting.value?.title || 'Painting');
              const canvas = layer && paintedCanvas(document, layer, seen.reading.raster);
              return pngFile(canvas ?? null, `${words} ${step.n} ${view.value}`);
            }}
          />
          {begun || studio.painting.value?.sessionIds.length ? (
            <a class={buttonClass()} href={linkTo(paintingId, 'record')}>
              Record
            </a>
          ) : null}
        </div>
      }
      actions={
        <a class={buttonClass('main', true)} href={linkTo(paintingId, 'easel')}>
          To the easel
        </a>
      }
    />
  );
}

/** Whose paints the plan is made from, where it is first read. */
function MadeFrom({ ownBox }: Pick<PlanScreenProps, 'ownBox'>) {
  const box = ownBox.box.value;
  return (
    <p class={styles.from}>
      {madeFromInWords(box)}{' '}
      {!tickedPaints(box) && <a href={hashOf({ screen: 'box' })}>Tick yours</a>}
    </p>
  );
}

/** What can't be reached: the most important in a sentence, all of it where there is more. */
export function ReachList({ plan }: { plan: Pick<WashPlan, 'warnings'> }) {
  const [first, ...more] = plan.warnings;
  const reach = plan.warnings.filter(isOfReach);
  if (!first) return null;
  return (
    <div class={styles.reach}>
      <p class={styles.first}>{words(first.text)}</p>
      {more.length > 0 && reach.length > 0 && (
        <details>
          <summary class={styles.summary}>What can't be reached ({reach.length})</summary>
          <ul class={styles.list}>
            {reach.map(({ code, text }) => (
              <li key={code}>{text}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

interface InView {
  readonly key: string | undefined;
  readonly index: number;
}

/**
 * The step in view, kept by its key: when the plan is made again it is the same step, wherever it stands then.
 * Where it is gone, the one in its place.
 */
export function useStepInView(steps: readonly Step[], first: number) {
  const inView = useSignal<InView>({ key: steps[first]?.key, index: first });
  const keptIndex = steps.findIndex(({ key }) => key === inView.value.key);
  const index =
    keptIndex >= 0 ? keptIndex : Math.max(0, Math.min(inView.value.index, steps.length - 1));
  return {
    index,
    show: (next: number): void => {
      inView.value = { key: steps[next]?.key, index: next };
    },
  };
}
