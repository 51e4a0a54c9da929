import type { ComponentChildren } from 'preact';
import type { Pictures } from '../../../workers/api.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import { type DecisionKind, lastDecision } from '../../core/decisions/standing-decisions.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo, type PaintingScreen } from '../../state/router.ts';
import { Button, buttonClass } from '../controls/button.tsx';
import styles from './decision-screen.module.css';
import { ScreenLayout, TopBar } from './screen-layout.tsx';
import { Waiting, WorkLine } from './waiting.tsx';

/** What a screen of decisions needs before it can show anything. */
export interface DecisionContext {
  readonly painting: Painting;
  readonly pictures: Pictures;
  readonly seen: OpenedReading;
}

interface DecisionScreenProps {
  studio: Studio;
  paintingId: string;
  name: PaintingScreen;
  title: string;
  /** Undo takes back the last of these. */
  kinds: readonly DecisionKind[];
  picture: (context: DecisionContext) => ComponentChildren;
  panel: (context: DecisionContext) => ComponentChildren;
}

/** Where she decides one thing about the reading: the picture, what is decided, undo, and the way back. */
export function DecisionScreen(props: DecisionScreenProps) {
  const { studio, paintingId, name, title, kinds, picture, panel } = props;
  const painting = studio.painting.value;
  const pictures = studio.pictures.value;
  const seen = studio.seen.value;
  const context = painting && pictures && seen ? { painting, pictures, seen } : null;
  const last = painting && lastDecision(painting.decisions, ...kinds);
  return (
    <ScreenLayout
      name={name}
      top={<TopBar title={title} back="Value study" backTo={linkTo(paintingId, 'look')} />}
      picture={context ? picture(context) : <Waiting studio={studio} />}
      panel={
        context && (
          <>
            <div class={styles.work}>
              <WorkLine studio={studio} />
            </div>
            {panel(context)}
          </>
        )
      }
      actions={
        context && (
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
