import type { ComponentChildren } from 'preact';
import type { Pictures } from '../../../workers/api.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import type { DecisionKind } from '../../core/decisions/standing-decisions.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo, type PaintingScreen } from '../../state/router.ts';
import { buttonClass } from '../controls/button.tsx';
import { UndoButtons } from '../controls/undo-buttons.tsx';
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
            <UndoButtons
              decisions={context.painting.decisions}
              kinds={kinds}
              onDecide={(decision) => void studio.decide(decision)}
            />
            <a class={buttonClass('main')} href={linkTo(paintingId, 'look')}>
              Done
            </a>
          </>
        )
      }
    />
  );
}
