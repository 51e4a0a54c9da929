import { useComputed, useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import type { NewDecision } from '../../core/decisions/painting.ts';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import {
  type LineStretch,
  lostUnder,
  type SubjectMode,
  standsOutFrom,
} from '../../core/reading/subject/subject.ts';
import { strokeOnPhoto } from '../../core/reference/photo-stroke.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { UndoButtons } from '../../ui/controls/undo-buttons.tsx';
import { ScreenLayout, TopBar } from '../../ui/layout/screen-layout.tsx';
import { Waiting } from '../../ui/layout/waiting.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import styles from '../../ui/pointer/drawn-stroke.module.css';
import { DrawnStroke, linePath } from '../../ui/pointer/drawn-stroke.tsx';
import { isSlip, StrokeStage } from '../../ui/pointer/stroke-stage.tsx';
import { SubjectPanel, subjectLayers } from './subject-panel.tsx';
import { useSubjectLine } from './use-subject-line.ts';

/** She circles the subject, mends its line with a brush, and sees how it stands against its ground. */
export function SubjectScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const mode = useSignal<SubjectMode>('circle');
  /** Diameter of the brush as a share of the picture's long side. */
  const brush = useSignal(0.04);
  const view = useSignal<'colour' | 'grey'>('colour');
  const line = useSubjectLine(studio);
  const layers = useComputed(() =>
    studio.pictures.value ? subjectLayers(studio.pictures.value, line.value.found) : null,
  );
  const hintId = useId();
  const painting = studio.painting.value;
  const pictures = studio.pictures.value;
  const seen = studio.seen.value;
  const stage = studio.work.value?.stage;
  const reading = stage !== undefined && stage !== 'paints' && stage !== 'washes';
  const ready = painting && pictures && seen && layers.value && !reading;
  const { found } = line.value;

  const draw = (path: readonly Point[]): void => {
    if (!painting || (mode.value === 'circle' && isSlip(path))) return;
    const width = mode.value === 'circle' ? 0 : brush.value;
    const stroke = strokeOnPhoto(painting.reference, { path, brush: width });
    void studio.note({ kind: 'subject', mode: mode.value, ...stroke });
  };
  const last = painting && lastDecision(painting.decisions, 'subject');
  const undo = (decision: NewDecision): void => {
    void studio.note(decision);
    if (last?.mode === 'circle') mode.value = 'circle';
  };
  const noSubject = (): void => {
    void studio.note({ kind: 'subject', mode: 'circle', stroke: [], brush: 0 });
    mode.value = 'circle';
  };
  // Until she draws, takes it or refuses it; Undo brings it back.
  const proposal = (!last && seen?.reading.proposedSubject) || null;
  const take = (): void => {
    if (!painting || !proposal) return;
    const { mode: circle, ...stroke } = proposal;
    void studio.note({
      kind: 'subject',
      mode: circle,
      ...strokeOnPhoto(painting.reference, stroke),
    });
  };

  return (
    <ScreenLayout
      name="subject"
      top={
        <TopBar
          title="Subject and background"
          back="Value study"
          backTo={linkTo(paintingId, 'look')}
        />
      }
      picture={
        ready ? (
          <Picture
            label={found ? 'Your subject, its background dimmed' : 'Your reference'}
            size={seen.reading.raster}
            layers={layers.value ?? {}}
            // What is to be added lies in the ground: there it must be seen.
            show={found && mode.value !== 'add' ? `${view.value}-alone` : view.value}
            over={
              <StrokeStage
                label={
                  mode.value === 'circle' ? 'Draw round the subject' : 'Paint over the subject'
                }
                brushPx={
                  mode.value === 'circle'
                    ? 0
                    : brush.value * Math.max(pictures.grey.width, pictures.grey.height)
                }
                size={seen.reading.raster}
                hintId={hintId}
                onStroke={draw}
              >
                <SubjectLineDrawing size={seen.reading.raster} line={found?.facts.line ?? []} />
                {proposal && (
                  <DrawnStroke
                    size={seen.reading.raster}
                    stroke={proposal.path}
                    closed
                    brushPx={0}
                  />
                )}
              </StrokeStage>
            }
          />
        ) : (
          <Waiting studio={studio} />
        )
      }
      panel={
        ready && (
          <SubjectPanel
            line={line.value}
            grey={pictures.grey}
            size={seen.reading.raster}
            mode={mode}
            brush={brush}
            view={view}
            hintId={hintId}
            onTake={proposal && take}
            onRefuse={noSubject}
          />
        )
      }
      actions={
        ready && (
          <>
            <UndoButtons
              decisions={painting?.decisions ?? []}
              kinds={['subject']}
              onDecide={undo}
            />
            <Button disabled={!found && !line.value.empty} onClick={noSubject}>
              Start again
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

type Standing = 'out' | 'seen' | 'lost';

function standingOf({ contrast }: LineStretch): Standing {
  const size = Math.abs(contrast);
  if (size < lostUnder) return 'lost';
  return size < standsOutFrom ? 'seen' : 'out';
}

/** The subject's line by how it stands against its ground; black with a white casing. */
function SubjectLineDrawing({ size, line }: { size: PixelSize; line: readonly LineStretch[] }) {
  return (
    <svg
      class={styles.lines}
      viewBox={`0 0 ${size.width} ${size.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {(['casing', 'ink'] as const).map((ink) =>
        line.map((stretch, i) => (
          <path
            key={`${ink} ${i}`}
            class={styles[ink]}
            data-standing={standingOf(stretch)}
            d={linePath(stretch.path, size)}
          />
        )),
      )}
    </svg>
  );
}
