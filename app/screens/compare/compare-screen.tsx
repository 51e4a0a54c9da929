import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { JudgedComparison } from '../../core/compare/comparison.ts';
import type { App } from '../../state/create-app.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import { learnFromSheets } from '../../state/paints/learn-from-sheets.ts';
import { linkTo } from '../../state/router.ts';
import { createAdviceTaking } from '../../state/session/advice-taking.ts';
import { type Comparing, createComparing } from '../../state/session/comparing.ts';
import type { Desk } from '../../state/session/desk.ts';
import type { Easel } from '../../state/session/easel.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PhotoInput } from '../../ui/controls/photo-input.tsx';
import { ProgressBar } from '../../ui/controls/progress-bar.tsx';
import { ScreenLayout, TopBar } from '../../ui/layout/screen-layout.tsx';
import { Standstill } from '../../ui/layout/waiting.tsx';
import { CameraScreen } from '../camera/camera-screen.tsx';
import styles from './compare-screen.module.css';
import { ComparedChoices, firstView } from './compared-choices.tsx';
import { ComparedPicture } from './compared-picture.tsx';
import { PlacePanel, PlacePicture, usePlaceState } from './place-part.tsx';
import { ResultPanel, type ShownAdvice } from './result-part.tsx';
import { TakePanel, TakePicture } from './take-part.tsx';

interface ComparePlaceProps {
  app: App;
  paintingId: string;
}

/** Her sheet beside its plan, with all it takes from the app: the session under way, or the last one. */
export function ComparePlace({ app, paintingId }: ComparePlaceProps) {
  const { easel, paintNeeds, paintCalls } = app;
  const { client, store: keepsakes, ownBox } = paintNeeds;
  useEffect(() => {
    void easel.lookBack(paintingId).then(() => {
      if (easel.running.value) void easel.open(paintingId);
    });
    return easel.leave;
  }, [easel, paintingId]);
  const sessionId = easel.desk.value?.sessionId;
  const comparing = useMemo(
    () =>
      sessionId === undefined ? null : createComparing({ client, keepsakes, easel, sessionId }),
    [client, keepsakes, easel, sessionId],
  );
  const { value: log } = easel.log;
  useEffect(() => {
    learnFromSheets({ easel, ownBox }).catch(() => undefined); // told again at the next line
  }, [easel, ownBox, log]);
  return <CompareScreen {...{ easel, comparing, paintingId }} calls={paintCalls} />;
}

interface CompareScreenProps {
  easel: Easel;
  /** Null while there is no session. */
  comparing: Comparing | null;
  calls: PictureCalls;
  paintingId: string;
}

const noSession =
  'There is no session of this painting yet. Begin it at the easel: then your sheet can be held against what was planned for it.';

/** A photo of her sheet is taken, the sheet found in it, and what is worth doing said. */
export function CompareScreen({ easel, comparing, calls, paintingId }: CompareScreenProps) {
  const desk = easel.desk.value;
  useEffect(() => {
    if (!comparing) return;
    void comparing.open();
    return comparing.leave;
  }, [comparing]);
  const back = easel.running.value ? 'easel' : 'record';
  const top = (
    <TopBar
      title="Your sheet beside the plan"
      back={back === 'easel' ? 'Easel' : 'Record'}
      backTo={linkTo(paintingId, back)}
    />
  );
  if (!desk || !comparing)
    return (
      <ScreenLayout
        name="compare"
        top={top}
        picture={<Standstill problem={easel.problem.value} onAgain={easel.again} />}
        panel={easel.problem.value === null && <p>{noSession}</p>}
        actions={null}
      />
    );
  return <Compare {...{ easel, desk, comparing, calls, top }} />;
}

type View = 'camera' | 'take' | 'place' | 'result';

const workWords: Readonly<Record<string, string>> = {
  opening: 'Opening the photo',
  shapes: 'Finding the sheet in it',
  values: 'Holding it against the plan',
};

interface CompareProps {
  easel: Easel;
  desk: Desk;
  comparing: Comparing;
  calls: PictureCalls;
  top: ComponentChildren;
}

function Compare({ easel, desk, comparing, calls, top }: CompareProps) {
  /** What she asked to see; null: what comes next by itself. */
  const asked = useSignal<View | null>(null);
  const place = usePlaceState();
  const view = useSignal(firstView);
  const shown = useSignal<ShownAdvice | null>(null);
  const found = comparing.found.value;
  const work = comparing.work.value;
  const comparison = found?.comparison ?? null;
  const judged: JudgedComparison | null = comparison?.refused === null ? comparison : null;
  const isJudged = judged !== null && found?.pictures != null;
  const isSettled = isJudged && comparing.isCurrent.value;
  const next: View = found ? (isJudged ? 'result' : 'place') : 'take';
  const now = asked.value ?? next;
  const look = (to: View | null): void => {
    asked.value = to;
  };
  const take = (photo: Blob): void => {
    shown.value = null;
    look(null);
    void comparing.take(photo);
  };
  const { wetness } = comparing.draft.value;
  const canTake = comparing.step.value !== null && wetness !== null && wetness !== 'shiny';

  if (now === 'camera')
    return (
      <CameraScreen
        onPhoto={take}
        onChooseFile={take}
        onCancel={() => look(null)}
        guide={{
          ratio: desk.seen.reading.sheet.widthMm / desk.seen.reading.sheet.heightMm,
          words: 'Fill the frame with the painting, from straight above, in even light.',
        }}
      />
    );
  if (work)
    return (
      <ScreenLayout
        name="compare"
        top={top}
        picture={
          <div class={styles.working}>
            <p role="status">{workWords[work.stage] ?? 'Working'} …</p>
            <ProgressBar part={work.part} class={styles.bar} />
          </div>
        }
        panel={null}
        actions={
          <Button large onClick={comparing.cancel}>
            Cancel
          </Button>
        }
      />
    );
  const problem = comparing.problem.value;
  const said = problem !== null && (
    <p class={styles.refused} role="alert">
      {problem}
    </p>
  );
  const another = (
    <Button large onClick={() => look('take')}>
      Another photo
    </Button>
  );
  if (now === 'result' && judged && found?.pictures) {
    const advice = shown.value && (judged.advice[shown.value.n] ?? null);
    const { photoId } = comparing.draft.value;
    const after = comparing.step.value?.key;
    // A sheet that is finished takes no more steps.
    const takes =
      easel.running.value && easel.inCharge.value && photoId !== null && after !== undefined
        ? createAdviceTaking({ easel, photoId, after, pictures: found.pictures })
        : undefined;
    return (
      <ScreenLayout
        name="compare"
        top={top}
        picture={
          <ComparedPicture
            seen={desk.seen}
            pictures={found.pictures}
            view={view}
            advice={advice}
            pointed={shown.value?.as === 'where'}
          />
        }
        panel={
          <>
            {said}
            <ResultPanel
              desk={desk}
              comparison={judged}
              step={comparing.step.value}
              choices={<ComparedChoices view={view} mended={advice !== null} />}
              takes={takes}
              shown={shown.value}
              onShow={(next) => {
                shown.value = next;
                const pair = next?.as === 'then' ? 'mended' : 'plan';
                view.value = { ...view.value, pair };
              }}
            />
          </>
        }
        actions={
          <>
            <Button large onClick={() => look('place')}>
              Corners
            </Button>
            {another}
          </>
        }
      />
    );
  }
  if (now === 'place' && found)
    return (
      <ScreenLayout
        name="compare"
        top={top}
        picture={<PlacePicture comparing={comparing} place={place} />}
        panel={
          <>
            {said}
            <PlacePanel comparing={comparing} place={place} />
          </>
        }
        actions={
          <>
            {another}
            <Button
              large
              look="main"
              onClick={() => {
                look(null);
                if (!isSettled) void comparing.compare();
              }}
            >
              {isSettled ? 'See the verdict' : 'Compare'}
            </Button>
          </>
        }
      />
    );
  return (
    <ScreenLayout
      name="compare"
      top={top}
      picture={<TakePicture desk={desk} comparing={comparing} calls={calls} />}
      panel={
        <>
          {said}
          <TakePanel comparing={comparing} />
        </>
      }
      actions={
        <>
          {canTake && comparing.draft.value.photoId !== null && (
            <Button
              large
              onClick={() => {
                look(null);
                if (!comparing.isCurrent.value) void comparing.compare();
              }}
            >
              {comparing.isCurrent.value ? 'Back to this photo' : 'Compare the last photo'}
            </Button>
          )}
          {canTake && (
            <>
              <PhotoInput large onFile={take}>
                Choose a photo
              </PhotoInput>
              <Button large look="main" onClick={() => look('camera')}>
                Take a photo
              </Button>
            </>
          )}
        </>
      }
    />
  );
}
