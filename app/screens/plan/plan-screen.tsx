import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { WashPlan } from '../../model/wash-plan.ts';
import type { OwnAirState } from '../../state/own-air.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import type { PictureCalls } from '../../state/picture-calls.ts';
import { linkTo } from '../../state/route.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';
import { Button, buttonClass } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import { TopBar } from '../common/top-bar.tsx';
import { useSoft } from '../common/use-soft.ts';
import { useStudyPicture } from '../common/use-study-picture.ts';
import { Waiting } from '../common/waiting.tsx';
import { Workplace } from '../common/workplace.tsx';
import { pictureLayers } from '../look/look-layers.ts';
import { ChangeStep } from './change-step.tsx';
import { EveningLabel } from './evening-label.tsx';
import { EveningPanel } from './evening-panel.tsx';
import { PassagesFold } from './passages-fold.tsx';
import styles from './plan-screen.module.css';
import { ReachList } from './reach-list.tsx';
import { type StageView, stageLayers } from './stage-layers.ts';
import { StagePicture } from './stage-picture.tsx';
import { StageStrip } from './stage-strip.tsx';
import { stageWords } from './stage-words.ts';
import { StepCard } from './step-card.tsx';
import { useStepInView } from './use-step-in-view.ts';

interface PlanScreenProps {
  studio: Studio;
  calls: PaintCalls & PictureCalls;
  ownAir: Pick<OwnAirState, 'air' | 'set'>;
  paintingId: string;
}

/** The order of work, step by step, each with the sheet as it should look after it. */
export function PlanScreen(props: PlanScreenProps) {
  const seen = props.studio.seen.value;
  const plan = props.studio.plan.value;
  if (seen && plan) return <ReadyPlan {...props} seen={seen} plan={plan} />;
  return (
    <Workplace
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
    <Workplace
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
      panel={<p role="status">{plan.warnings[0]?.text ?? 'There is nothing to paint here.'}</p>}
      actions={
        <a class={buttonClass('main', true)} href={linkTo(paintingId, 'paints')}>
          Look at the paints
        </a>
      }
    />
  );
}

interface ReadyPlanProps extends PlanScreenProps {
  seen: Seen;
  plan: WashPlan;
}

function ReadyPlan({ calls, ownAir, paintingId, seen, plan, studio }: ReadyPlanProps) {
  const firstWash = plan.steps.findIndex((step) => step.kind === 'wash');
  const inView = useStepInView(plan.steps, Math.max(0, firstWash));
  const view = useSignal<StageView>('sheet');
  const step = plan.steps[inView.index];
  const soft = useSoft(calls, useStudyPicture(studio, seen));
  const at = step ? plan.steps.indexOf(step) : 0;
  const layers = useMemo(() => stageLayers(seen, plan, at, soft), [seen, plan, at, soft]);
  const stageSaid = stageWords(plan, at, view.value);
  if (!step) return <NothingToPaint paintingId={paintingId} seen={seen} plan={plan} />;
  return (
    <Workplace
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
          label={`Step ${step.n}: ${step.title}`}
          size={seen.reading.raster}
          layers={layers}
          view={view.value}
        />
      }
      panel={
        <div class={styles.panel}>
          <StageStrip seen={seen} steps={plan.steps} current={at} onStep={inView.show} />
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
          <ReachList plan={plan} />
          <EveningLabel plan={plan} step={step} />
          <StepCard plan={plan} reading={seen.reading} step={step} calls={calls} />
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
