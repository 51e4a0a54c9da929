import { useEffect } from 'preact/hooks';
import type { Painting } from '../../model/painting.ts';
import { linkTo } from '../../state/route.ts';
import type { Studio } from '../../state/studio.ts';
import { Button, buttonClass } from '../common/button.tsx';
import { TopBar } from '../common/top-bar.tsx';
import { Waiting } from '../common/waiting.tsx';
import { Workplace } from '../common/workplace.tsx';
import { LookPicture } from './look-picture.tsx';
import { StudyPanel } from './study-panel.tsx';
import { useLook } from './use-look.ts';
import { useSpots } from './use-spots.ts';
import { useStudyTools } from './use-study-tools.ts';

interface LookScreenProps {
  studio: Studio;
  paintingId: string;
  /** Left out: no small study is offered. */
  onSmallStudy?: (painting: Painting) => Promise<void>;
}

/** The value study: the reference in grey first, then its few values, whites and colours. */
export function LookScreen({ studio, paintingId, onSmallStudy }: LookScreenProps) {
  const look = useLook();
  const tools = useStudyTools();
  const spots = useSpots(studio, look, tools);
  const seen = studio.seen.value;
  const pictures = studio.pictures.value;
  const problem = studio.problem.value;
  // Her limits stand until the reading has followed, or could not.
  useEffect(() => {
    look.limits.value = null;
  }, [seen]);
  useEffect(() => {
    if (problem) look.limits.value = null;
  }, [problem]);

  return (
    <Workplace
      name="look"
      top={
        <TopBar title="Value study" back="Paintings" backTo="#/">
          <a class={buttonClass('quiet')} href={linkTo(paintingId, 'sheet')}>
            Sheet
          </a>
        </TopBar>
      }
      picture={
        pictures ? (
          <LookPicture studio={studio} look={look} tools={tools} pictures={pictures} />
        ) : (
          <Waiting studio={studio} />
        )
      }
      panel={
        pictures && (
          <StudyPanel
            studio={studio}
            paintingId={paintingId}
            look={look}
            tools={tools.value}
            spots={spots}
            onSmallStudy={onSmallStudy}
          />
        )
      }
      actions={
        studio.painting.value?.purpose === 'study' ? (
          <Button large disabled={!seen} onClick={() => void studio.paintIt()}>
            Paint this one too
          </Button>
        ) : seen ? (
          <a class={buttonClass('main', true)} href={linkTo(paintingId, 'plan')}>
            Show me the washes
          </a>
        ) : null
      }
    />
  );
}
