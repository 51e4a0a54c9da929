import { useMemo } from 'preact/hooks';
import type { Point } from '../../model/lab.ts';
import type { Decided } from '../common/decide-place.tsx';
import { Picture } from '../common/picture.tsx';
import { pictureLayers, valuesLayer } from '../look/look-layers.ts';
import { StrokeStage } from '../strokes/stroke-stage.tsx';
import { type AlterDecision, ChangeDrawing } from './change-drawing.tsx';
import { hintFor } from './change-words.ts';
import type { ChangeTools } from './changes-panel.tsx';
import { useUnreadChanges } from './use-unread-changes.ts';

interface ChangesPictureProps {
  now: Decided;
  changes: readonly AlterDecision[];
  tools: ChangeTools;
  hintId: string;
  onStroke: (path: readonly Point[]) => void;
}

/** The picture as it is to be painted, with what it does not show yet and what she points at drawn on it. */
export function ChangesPicture({ now, changes, tools, hintId, onStroke }: ChangesPictureProps) {
  const { painting, pictures, seen } = now;
  const { change, hand, brush, view, pointed } = tools;
  const { reference, grey } = pictures;
  const layers = useMemo(
    () => ({ ...pictureLayers({ reference, grey }), values: valuesLayer(seen) }),
    [reference, grey, seen],
  );
  const unread = useUnreadChanges(seen, changes);
  const drawn = changes.filter((one) => one.id === pointed.value || unread.includes(one));
  const size = seen.reading.raster;
  const isBrush = hand.value === 'brush';
  return (
    <Picture
      label="Your picture as it is to be painted"
      size={size}
      layers={layers}
      show={view.value}
      over={
        <StrokeStage
          label={hintFor(change.value, isBrush)}
          brushPx={isBrush ? brush.value * Math.max(size.width, size.height) : 0}
          size={size}
          hintId={hintId}
          onStroke={onStroke}
        >
          <ChangeDrawing changes={drawn} cut={painting.reference} size={size} />
        </StrokeStage>
      }
    />
  );
}
