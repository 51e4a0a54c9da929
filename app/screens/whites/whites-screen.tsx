import { useId, useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import { type DecisionOf, standingDecisions } from '../../core/decisions/standing-decisions.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { whiteAt } from '../../core/reading/whites/white-map.ts';
import { isSmallWhite, type White } from '../../core/reading/whites/whites.ts';
import { strokeInCut, strokeOnPhoto } from '../../core/reference/photo-stroke.ts';
import type { Reference } from '../../core/reference/reference.ts';
import { wayLetters } from '../../core/words/reading/whites.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { type DecisionContext, DecisionScreen } from '../../ui/layout/decision-screen.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import drawn from '../../ui/pointer/drawn-stroke.module.css';
import { linePath } from '../../ui/pointer/drawn-stroke.tsx';
import { PlaceStage } from '../../ui/pointer/place-stage.tsx';
import { StrokeStage } from '../../ui/pointer/stroke-stage.tsx';
import { maxRows, useWhites, type WhitesState } from './use-whites.ts';
import { WhitesPanel } from './whites-panel.tsx';
import styles from './whites-screen.module.css';

/** What stays bare paper, how each white is kept, and a brush to keep more or fewer. */
export function WhitesScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const state = useWhites(studio);
  return (
    <DecisionScreen
      studio={studio}
      paintingId={paintingId}
      name="whites"
      title="Whites to keep"
      kinds={['white', 'white-way']}
      picture={(context) => <WhitesPicture studio={studio} context={context} state={state} />}
      panel={(context) => <WhitesPanel studio={studio} context={context} state={state} />}
    />
  );
}

interface WhitesPictureProps {
  studio: Studio;
  context: DecisionContext;
  state: WhitesState;
}

const brushLabels = {
  keep: 'Brush over what is to stay white',
  paint: 'Brush over a white that is to be painted',
} as const;

/** The whites as bare paper over her reference; she touches one, or brushes. */
function WhitesPicture({ studio, context, state }: WhitesPictureProps) {
  const { painting, seen } = context;
  const size = seen.reading.raster;
  const hintId = useId();
  const unread = useUnreadStrokes(context);
  const tool = state.tool.value;

  const touch = (place: Point): void => {
    const index = state.found.value ? whiteAt(state.found.value.map, size, place) : -1;
    state.chosen.value = index < 0 ? null : { reading: seen.reading, index };
    state.missed.value = index < 0;
  };
  const draw = (path: readonly Point[]): void => {
    if (tool === 'touch') return;
    const stroke = strokeOnPhoto(painting.reference, { path, brush: state.brush.value });
    void studio.decide({ kind: 'white', mode: tool, ...stroke });
  };
  const drawn = <UnreadStrokes size={size} cut={painting.reference} strokes={unread} />;
  return (
    <Picture
      label="Your reference, its whites as bare paper"
      size={size}
      layers={state.layers.value}
      show={state.view.value}
      over={
        tool === 'touch' ? (
          <PlaceStage label="Touch a white to choose how it is kept." onPlace={touch}>
            {drawn}
            <WhiteMarks whites={state.whites.value} index={state.index.value} />
          </PlaceStage>
        ) : (
          <>
            <StrokeStage
              key={tool}
              label={brushLabels[tool]}
              brushPx={state.brush.value * Math.max(size.width, size.height)}
              size={size}
              hintId={hintId}
              onStroke={draw}
            >
              {drawn}
            </StrokeStage>
            <span id={hintId} class="spoken">
              Arrow keys move the brush, Enter dabs.
            </span>
          </>
        )
      }
    />
  );
}

/** Numbers stand above whites smaller than this, which they would hide, mm. */
const besideUnderMm = 12;

const placed = ({ at: [x, y] }: White) => ({ '--x': `${x * 100}%`, '--y': `${y * 100}%` });

/** Over the picture: number and letter of the large whites, a ring round the chosen one. */
function WhiteMarks({ whites, index }: { whites: readonly White[]; index: number }) {
  const chosen = whites[index];
  return (
    <>
      {chosen && (
        <span class={styles.ring} style={placed(chosen)} aria-hidden="true" data-testid="ring" />
      )}
      {whites.map((white, i) =>
        i === index || (i < maxRows && !isSmallWhite(white)) ? (
          <span
            key={i}
            class={styles.number}
            style={placed(white)}
            data-chosen={i === index}
            data-beside={i !== index && white.shortSideMm < besideUnderMm}
            aria-hidden="true"
          >
            {i + 1} {wayLetters[white.way]}
          </span>
        ) : null,
      )}
    </>
  );
}

interface UnreadStrokesProps {
  size: PixelSize;
  cut: Pick<Reference, 'crop' | 'sheet'>;
  strokes: readonly DecisionOf<'white'>[];
}

/** Her brush strokes as she drew them: paper where she keeps, a veil where she paints over. */
function UnreadStrokes({ size, cut, strokes }: UnreadStrokesProps) {
  if (strokes.length === 0) return null;
  const longSide = Math.max(size.width, size.height);
  return (
    <svg
      class={drawn.lines}
      viewBox={`0 0 ${size.width} ${size.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      data-testid="unread-strokes"
    >
      {strokes.map((decision) => {
        const { path, brush } = strokeInCut(cut, decision);
        return (
          <path
            key={decision.id}
            class={styles.stroke}
            data-mode={decision.mode}
            // A dab is a line without length: only round ends make it a spot.
            d={`${linePath(path, size)}${brush > 0 ? 'l0 0' : 'z'}`}
            data-filled={brush === 0 || undefined}
            stroke-width={brush * longSide}
          />
        );
      })}
    </svg>
  );
}

/** Her strokes that the reading in sight does not know of yet: they stay drawn until it follows. */
function useUnreadStrokes({ painting, seen }: DecisionContext): readonly DecisionOf<'white'>[] {
  const read = useRef<{ readonly seen: unknown; readonly ids: ReadonlySet<string> } | null>(null);
  const strokes = standingDecisions(painting.decisions, 'white');
  // A decision stops the reading before it: a new one knows of all that is decided by then.
  if (read.current?.seen !== seen) {
    read.current = { seen, ids: new Set(painting.decisions.map(({ id }) => id)) };
  }
  return strokes.filter(({ id }) => !read.current?.ids.has(id));
}
