import '../../styles/print-only.css';
import { useSignal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import type { Painting } from '../../core/decisions/painting.ts';
import { planRows } from '../../core/plan/evening/evening-times.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import { planCautions } from '../../core/plan/steps/step-cautions.ts';
import { scaledMarks } from '../../core/raster/paint-marks.ts';
import { shrinkSlots } from '../../core/raster/paint-slots.ts';
import { scaledGrid } from '../../core/raster/paint-squares.ts';
import { words } from '../../core/words/plan/words.ts';
import { sheetLayer } from '../../drawing/layers.ts';
import { drawPlanPicture } from '../../drawing/plan-picture.ts';
import { pngFile } from '../../drawing/png-file.ts';
import { fileWords } from '../../state/backup/hand-out.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { hashOf, linkTo } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { HandOutButtons } from '../../ui/controls/hand-out-buttons.tsx';
import { ScreenLayout, TopBar } from '../../ui/layout/screen-layout.tsx';
import { useFittingType } from '../../ui/layout/use-fitting-type.ts';
import { Waiting } from '../../ui/layout/waiting.tsx';
import { studyEdges, useSoft } from '../../ui/picture/use-soft.ts';
import { HandoutSheet } from './handout-sheet.tsx';
import styles from './plan-page-screen.module.css';
import sheetStyles from './plan-sheet.module.css';
import { PlanSheet, type StageMap } from './plan-sheet.tsx';

interface PlanPageScreenProps {
  studio: Studio;
  calls: PictureCalls;
  paintingId: string;
}

/** The plan as one page of paper, to hang beside the sheet. */
export function PlanPageScreen({ studio, calls, paintingId }: PlanPageScreenProps) {
  const seen = studio.seen.value;
  const plan = studio.plan.value;
  const painting = studio.painting.value;
  if (seen && plan && painting)
    return <ReadyPage studio={studio} calls={calls} painting={painting} seen={seen} plan={plan} />;
  return (
    <ScreenLayout
      name="plan-page"
      top={<TopBar title="Plan on one page" back="Wash plan" backTo={linkTo(paintingId, 'plan')} />}
      picture={<Waiting studio={studio} />}
      panel={<p>The page is made from the wash plan.</p>}
      actions={
        <Button look="main" large disabled>
          Print
        </Button>
      }
    />
  );
}

/** Long side of the picture of a stage, px: sharp in print at 36 mm. */
const stagePx = 420;

interface ReadyPageProps {
  studio: Studio;
  calls: PictureCalls;
  painting: Painting;
  seen: OpenedReading;
  plan: WashPlan;
}

function ReadyPage({ studio, calls, painting, seen, plan }: ReadyPageProps) {
  const picture = useMemo(() => {
    const { width, height } = seen.reading.raster;
    const { slotMap, ...size } = shrinkSlots(seen.slotMap, width, height, stagePx);
    const { squares, details } = seen.reading;
    const scale = size.width / width;
    const grids = {
      ...(squares && { squares: scaledGrid(squares, scale) }),
      ...(details && { details: scaledMarks(details, scale) }),
    };
    return { slotMap, size, edges: studyEdges(studio), grids };
  }, [seen, painting]);
  const soft = useSoft(calls, picture);
  const stage = useMemo(
    (): StageMap => ({
      ...picture.size,
      slotMap: picture.slotMap,
      ...picture.grids,
      soft,
    }),
    [picture, soft],
  );
  const page = useRef<HTMLDivElement>(null);
  const type = useFittingType(page, plan);
  const forClass = useSignal(false);
  const { title, reference } = painting;
  const makePicture = (): Promise<readonly File[]> =>
    pictureFiles(title || 'Painting', plan, stage);
  const content = (
    <PlanSheet
      title={title || 'Painting'}
      sheet={reference.sheet}
      plan={plan}
      reading={seen.reading}
      stage={stage}
      type={type}
    />
  );
  return (
    <>
      <ScreenLayout
        name="plan-page"
        top={
          <TopBar title="Plan on one page" back="Wash plan" backTo={linkTo(painting.id, 'plan')} />
        }
        picture={
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keys
          <section class={styles.frame} tabIndex={0} aria-label="The page">
            <div class={`${styles.paper} ${sheetStyles.page}`}>{content}</div>
          </section>
        }
        panel={
          <div class="stack">
            <p>
              Stages, values, mixes and times on one page of A4 or letter, to hang beside the sheet.
              The page is the same at every size; drag to see all of it.
            </p>
            <label class={styles.tick}>
              <input
                type="checkbox"
                checked={forClass.value}
                onChange={(event) => {
                  forClass.value = event.currentTarget.checked;
                }}
              />
              <span>
                For a class: print a second page with the photo, its values and where each puddle
                goes
              </span>
            </label>
            <HandOutButtons what="the plan as a picture" make={makePicture} />
            <a class={buttonClass()} href={hashOf({ screen: 'copies', what: painting.id })}>
              Hand the plan on as a file
            </a>
          </div>
        }
        actions={
          <Button look="main" large onClick={() => print()}>
            Print
          </Button>
        }
      />
      <div data-print="laid" aria-hidden="true">
        <div ref={page} class={`${styles.printed} ${sheetStyles.page}`} data-testid="plan-sheet">
          {content}
        </div>
        {forClass.value && <HandoutSheet title={title || 'Painting'} seen={seen} plan={plan} />}
      </div>
    </>
  );
}

/** The plan as one tall picture, a PNG. */
async function pictureFiles(title: string, plan: WashPlan, stage: StageMap): Promise<File[]> {
  const steps = planRows(plan)
    .filter(({ changes }) => changes)
    .map(({ step }) => ({
      title: `${step.n}. ${words(step.title)}`,
      words: words(step.prompt),
      draw: sheetLayer(stage, step),
    }));
  const canvas = drawPlanPicture(document.createElement('canvas'), {
    ...{ title, steps, size: stage },
    cautions: planCautions(plan),
  });
  return pngFile(canvas, `${fileWords(title)} wash plan`);
}
