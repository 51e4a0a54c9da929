import { useSignal } from '@preact/signals';
import { useId, useMemo } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import { standingDecisions } from '../../core/decisions/standing-decisions.ts';
import { type Change, strokeOnPhoto } from '../../core/reference/photo-stroke.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { type DecisionContext, DecisionScreen } from '../../ui/layout/decision-screen.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import { pictureLayers, valuesLayer } from '../../ui/picture/picture-layers.ts';
import { isSlip, StrokeStage } from '../../ui/pointer/stroke-stage.tsx';
import { type AlterDecision, ChangeDrawing, useUnreadChanges } from './change-drawing.tsx';
import { ChangesPanel, type ChangesView, type ChangeTools, hintFor } from './changes-panel.tsx';

const changesOf = ({ decisions }: Painting) => standingDecisions(decisions, 'alter');

/** She says what is painted otherwise than it is in the photo: left out, lighter, darker, a plain ground. */
export function ChangesScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const tools: ChangeTools = {
    change: useSignal<Change>('leave-out'),
    hand: useSignal<'round' | 'brush'>('round'),
    brush: useSignal(0.06),
    view: useSignal<ChangesView>('colour'),
    pointed: useSignal<string | null>(null),
  };
  const hintId = useId();
  const draw = (path: readonly Point[]): void => {
    const painting = studio.painting.value;
    const brush = tools.hand.value === 'brush' ? tools.brush.value : 0;
    if (!painting || (brush === 0 && isSlip(path))) return;
    tools.pointed.value = null;
    const stroke = strokeOnPhoto(painting.reference, { path, brush });
    void studio.decide({ kind: 'alter', change: tools.change.value, ...stroke });
  };
  return (
    <DecisionScreen
      studio={studio}
      paintingId={paintingId}
      name="changes"
      title="Change the picture"
      kinds={['alter', 'ground']}
      picture={(context) => (
        <ChangesPicture
          context={context}
          changes={changesOf(context.painting)}
          tools={tools}
          hintId={hintId}
          onStroke={draw}
        />
      )}
      panel={({ painting }) => (
        <ChangesPanel
          studio={studio}
          painting={painting}
          changes={changesOf(painting)}
          tools={tools}
          hintId={hintId}
        />
      )}
    />
  );
}

interface ChangesPictureProps {
  context: DecisionContext;
  changes: readonly AlterDecision[];
  tools: ChangeTools;
  hintId: string;
  onStroke: (path: readonly Point[]) => void;
}

/** The picture as it is to be painted, with what it does not show yet and what she points at drawn on it. */
function ChangesPicture({ context, changes, tools, hintId, onStroke }: ChangesPictureProps) {
  const { painting, pictures, seen } = context;
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
