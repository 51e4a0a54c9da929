import { useId } from 'preact/hooks';
import { whiteAt } from '../../drawing/white-map.ts';
import type { Point } from '../../model/lab.ts';
import { strokeOnPhoto } from '../../model/stroke-on-photo.ts';
import type { Studio } from '../../state/studio.ts';
import type { Decided } from '../common/decide-place.tsx';
import { Picture } from '../common/picture.tsx';
import { PlaceStage } from '../strokes/place-stage.tsx';
import { StrokeStage } from '../strokes/stroke-stage.tsx';
import { UnreadStrokes } from './unread-strokes.tsx';
import { useUnreadStrokes } from './use-unread-strokes.ts';
import type { WhitesState } from './use-whites.ts';
import { WhiteMarks } from './white-marks.tsx';

interface WhitesPictureProps {
  studio: Studio;
  now: Decided;
  state: WhitesState;
}

const brushLabels = {
  keep: 'Brush over what is to stay white',
  paint: 'Brush over a white that is to be painted',
} as const;

/** The whites as bare paper over her reference; she touches one, or brushes. */
export function WhitesPicture({ studio, now, state }: WhitesPictureProps) {
  const { painting, seen } = now;
  const size = seen.reading.raster;
  const hintId = useId();
  const unread = useUnreadStrokes(now);
  const tool = state.tool.value;

  const touch = (place: Point): void => {
    const index = state.found.value ? whiteAt(state.found.value.map, size, place) : -1;
    state.chosen.value = index < 0 ? null : { of: seen.reading, index };
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
