import type { ComponentChildren } from 'preact';
import type { Pictures } from '../../../workers/analysis-api.ts';
import type { Painting } from '../../model/painting.ts';
import { type DecisionKind, lastDecision } from '../../model/standing-decisions.ts';
import { linkTo, type PaintingScreen } from '../../state/route.ts';
import type { Seen } from '../../state/seen.ts';
import type { Studio } from '../../state/studio.ts';
import { Button, buttonClass } from './button.tsx';
import styles from './decide-place.module.css';
import { TopBar } from './top-bar.tsx';
import { Waiting, WorkLine } from './waiting.tsx';
import { Workplace } from './workplace.tsx';

/** What a screen of decisions needs before it can show anything. */
export interface Decided {
  readonly painting: Painting;
  readonly pictures: Pictures;
  readonly seen: Seen;
}

interface DecidePlaceProps {
  studio: Studio;
  paintingId: string;
  name: PaintingScreen;
  title: string;
  /** Undo takes back the last of these. */
  kinds: readonly DecisionKind[];
  picture: (now: Decided) => ComponentChildren;
  panel: (now: Decided) => ComponentChildren;
}

/** Where she decides one thing about the reading: the picture, what is decided, undo, and the way back. */
export function DecidePlace(props: DecidePlaceProps) {
  const { studio, paintingId, name, title, kinds, picture, panel } = props;
  const painting = studio.painting.value;
  const pictures = studio.pictures.value;
  const seen = studio.seen.value;
  const now = painting && pictures && seen ? { painting, pictures, seen } : null;
  const last = painting && lastDecision(painting.decisions, ...kinds);
  return (
    <Workplace
      name={name}
      top={<TopBar title={title} back="Value study" backTo={linkTo(paintingId, 'look')} />}
      picture={now ? picture(now) : <Waiting studio={studio} />}
      panel={
        now && (
          <>
            <div class={styles.work}>
              <WorkLine studio={studio} />
            </div>
            {panel(now)}
          </>
        )
      }
      actions={
        now && (
          <>
            <Button
              disabled={!last}
              onClick={() => last && void studio.decide({ kind: 'undo', undoes: last.id })}
            >
              Undo
            </Button>
            <a class={buttonClass('main')} href={linkTo(paintingId, 'look')}>
              Done
            </a>
          </>
        )
      }
    />
  );
}
