import '../../styles/print-only.css';
import { useMemo, useRef } from 'preact/hooks';
import { shrinkSlots } from '../../drawing/shrink-slots.ts';
import type { Painting } from '../../model/painting.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import type { PictureCalls } from '../../state/picture-calls.ts';
import { linkTo } from '../../state/route.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import { studyEdges } from '../common/study-edges.ts';
import { TopBar } from '../common/top-bar.tsx';
import { useSoft } from '../common/use-soft.ts';
import { Waiting } from '../common/waiting.tsx';
import { Workplace } from '../common/workplace.tsx';
import styles from './plan-page-screen.module.css';
import sheetStyles from './plan-sheet.module.css';
import { PlanSheet } from './plan-sheet.tsx';
import type { StageMap } from './stage-map.ts';
import { useFittingType } from './use-fitting-type.ts';

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
    <Workplace
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
  seen: Seen;
  plan: WashPlan;
}

function ReadyPage({ studio, calls, painting, seen, plan }: ReadyPageProps) {
  const picture = useMemo(() => {
    const { width, height } = seen.reading.raster;
    const { slotMap, ...size } = shrinkSlots(seen.slotMap, width, height, stagePx);
    return { slotMap, size, edges: studyEdges(studio) };
  }, [seen, painting]);
  const soft = useSoft(calls, picture);
  const stage = useMemo(
    (): StageMap => ({ ...picture.size, slotMap: picture.slotMap, soft }),
    [picture, soft],
  );
  const page = useRef<HTMLDivElement>(null);
  const type = useFittingType(page, plan);
  const { title, reference } = painting;
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
      <Workplace
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
          <p>
            Stages, values, mixes and times on one page of A4 or letter, to hang beside the sheet.
            The page is the same at every size; on a small screen move it about.
          </p>
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
      </div>
    </>
  );
}
