import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Step } from '../../core/plan/plan.ts';
import { words } from '../../core/words/plan/words.ts';
import type { App } from '../../state/create-app.ts';
import type { PaintCalls, PictureCalls, ScrapCalls } from '../../state/painting/screen-calls.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { linkTo } from '../../state/router.ts';
import type { Easel } from '../../state/session/easel.ts';
import { type EaselSenses, easelSensesOf } from '../../state/session/easel-senses.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import type { QuickLookCalls } from '../../state/session/quick-look.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import layout from '../../ui/layout/screen-layout.module.css';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { Standstill } from '../../ui/layout/waiting.tsx';
import { PressPlace, usePressPlace } from '../../ui/pointer/press-place.ts';
import { EaselActions } from './easel-actions.tsx';
import { EaselPanel } from './easel-panel.tsx';
import { EaselPicture, EaselViews } from './easel-picture.tsx';
import styles from './easel-screen.module.css';
import { MorePanels, MoreSheet } from './more-panels.tsx';
import { RestingFace } from './resting-face.tsx';
import { useEaselKeys } from './use-easel-keys.ts';
import { useEaselView } from './use-easel-view.ts';

interface EaselScreenProps {
  easel: Easel;
  senses: EaselSenses;
  calls: PaintCalls & PictureCalls & ScrapCalls & QuickLookCalls;
  ownBox: OwnBoxState;
  keepsakes: Keepsakes;
  paintingId: string;
}

/** The easel with all it takes from the app. */
export function EaselPlace({ app, paintingId }: { app: App; paintingId: string }) {
  const { easel, paintCalls, ownBox, paintNeeds } = app;
  return (
    <EaselScreen
      easel={easel}
      senses={app.sensesBy(easelSensesOf)}
      calls={paintCalls}
      ownBox={ownBox}
      keepsakes={paintNeeds.store}
      paintingId={paintingId}
    />
  );
}

/** One step at a time, readable at arm's length: the picture, the sentence, the puddles, the clock. */
export function EaselScreen(props: EaselScreenProps) {
  const { easel, senses, calls, ownBox, keepsakes, paintingId } = props;
  const view = useEaselView(easel, calls);
  const more = useSignal(false);
  const { place, hint } = usePressPlace();
  useEaselKeys(easel, view, senses.settings.value.letterKeys);
  useEffect(() => {
    void easel.open(paintingId);
    return easel.leave;
  }, [easel, paintingId]);
  useEffect(() => senses.listen(), [senses]);
  useEffect(() => {
    const controller = new AbortController();
    for (const kind of ['pointerup', 'keydown'] as const)
      window.addEventListener(kind, senses.touched, { signal: controller.signal, capture: true });
    return () => controller.abort();
  }, [senses]);

  const step = easel.step.value;
  const desk = easel.desk.value;
  const { hand } = senses.settings.value;
  if (!desk || !step)
    return (
      <EaselFrame
        hand={hand}
        ratio={1}
        top={<TopBar title="Easel" back="Wash plan" backTo={linkTo(paintingId, 'plan')} />}
        picture={<Standstill problem={easel.problem.value} onAgain={easel.again} />}
        panel={null}
        views={null}
        actions={null}
      />
    );
  const steps = desk.plan.steps.length;
  return (
    <PressPlace.Provider value={place}>
      <EaselFrame
        hand={hand}
        ratio={desk.seen.reading.raster.width / desk.seen.reading.raster.height}
        waits={easel.session.value.phase === 'drying'}
        top={<EaselTop easel={easel} paintingId={paintingId} step={step} steps={steps} />}
        picture={<EaselPicture desk={desk} title={words(step.title)} view={view} />}
        panel={<EaselPanel {...{ easel, senses, keepsakes, calls, ownBox, desk, step, view }} />}
        views={<EaselViews view={view} step={step} />}
        actions={
          <EaselActions
            easel={easel}
            paintingId={paintingId}
            hint={hint.value}
            onMore={() => {
              more.value = true;
            }}
          />
        }
      />
      {more.value && (
        <MoreSheet
          onClose={() => {
            more.value = false;
          }}
        >
          <MorePanels {...{ easel, senses, keepsakes, calls, view }} />
        </MoreSheet>
      )}
      {senses.resting.value && <RestingFace easel={easel} senses={senses} />}
      <Told senses={senses} />
    </PressPlace.Provider>
  );
}

/** For a screen reader: the end of a wait, once, when she is not in the middle of something else. */
const Told = ({ senses }: { senses: EaselSenses }) => (
  <p class="spoken" role="status" data-testid="told">
    {senses.told.value}
  </p>
);

interface EaselFrameProps {
  /** Width of the picture over its height. */
  ratio: number;
  /** Something dries: the clock leads. */
  waits?: boolean;
  top: ComponentChildren;
  picture: ComponentChildren;
  /** Words; they scroll when they must, and nothing in them is needed to act. */
  panel: ComponentChildren;
  /** What the picture can show: one row under the thumb. */
  views: ComponentChildren;
  /** What can be done: always in sight, in the lower third. */
  actions: ComponentChildren;
  /** The hand she paints with: across, the picture stands on the other side. */
  hand: 'left' | 'right';
}

/** The easel's places: upright one under the other, across the picture beside the rest. */
function EaselFrame(props: EaselFrameProps) {
  const { ratio, waits, top, picture, panel, views, actions, hand } = props;
  return (
    <main
      class={styles.easel}
      style={{ '--ratio': ratio }}
      data-hand={hand}
      data-waits={waits || undefined}
      data-screen="easel"
    >
      <header class={layout.top}>{top}</header>
      <div class={layout.picture}>{picture}</div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keys */}
      <section class={styles.panel} tabIndex={0} aria-label="What to do">
        {panel}
      </section>
      <div class={styles.views}>{views}</div>
      <section class={styles.actions} aria-label="Actions">
        {actions}
      </section>
    </main>
  );
}

interface EaselTopProps {
  easel: Easel;
  paintingId: string;
  step: Step;
  steps: number;
}

/** The way back to the plan, where she stands in it, and whether it is kept. */
function EaselTop({ easel, paintingId, step, steps }: EaselTopProps) {
  const finished = easel.session.value.phase === 'finished';
  return (
    <>
      <a class={buttonClass('quiet')} href={linkTo(paintingId, 'plan')}>
        Plan
      </a>
      <h1 class={layout.title}>
        {finished ? 'Finished' : `${step.n} of ${steps}: ${words(step.title)}`}
      </h1>
      <span class={styles.saved} role="status">
        {easel.savedWord.value}
      </span>
    </>
  );
}
