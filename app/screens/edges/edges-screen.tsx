import { useComputed } from '@preact/signals';
import { edgeLayer } from '../../drawing/edge-layer.ts';
import { bitmapLayer, type Layer } from '../../drawing/layers.ts';
import type { Point } from '../../model/lab.ts';
import { nearestEdge } from '../../model/nearest-edge.ts';
import { placeOnEdge } from '../../model/place-on-edge.ts';
import { placeOnPhoto } from '../../model/stroke-on-photo.ts';
import type { Studio } from '../../state/studio.ts';
import { type Decided, DecidePlace } from '../common/decide-place.tsx';
import { Picture } from '../common/picture.tsx';
import { PlaceStage } from '../strokes/place-stage.tsx';
import { EdgeMarks } from './edge-marks.tsx';
import { EdgesPanel } from './edges-panel.tsx';
import { useEdges } from './use-edges.ts';

/** A touch this near to an edge means it, as a share of the long side: about half a fingertip on a phone. */
const touchReach = 0.035;

/** Every edge of the picture: what it is, what becomes of it, and what is proposed round the focus. */
export function EdgesScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const state = useEdges(studio);
  const { mode, view, chosen, missed, decided, focus, index } = state;
  const layers = useComputed((): Record<string, Layer> => {
    const pictures = studio.pictures.value;
    const edges = decided.value?.edges ?? [];
    if (!pictures) return {};
    return {
      grey: edgeLayer(bitmapLayer(pictures.grey), edges),
      colour: edgeLayer(bitmapLayer(pictures.reference), edges),
    };
  });
  const touch = ({ painting, seen }: Decided, place: Point): void => {
    missed.value = false;
    if (mode.value === 'focus') {
      void studio.decide({ kind: 'focus', place: placeOnPhoto(painting.reference, place) });
      return;
    }
    const { edges = [], raster } = seen.reading;
    const near = nearestEdge(edges, place, raster, touchReach);
    missed.value = near === null;
    chosen.value = near && placeOnEdge(edges, near.index, raster, near.at);
  };
  return (
    <DecidePlace
      studio={studio}
      paintingId={paintingId}
      name="edges"
      title="Edges"
      kinds={['edge', 'focus']}
      picture={(now) => (
        <Picture
          label="Your reference with its edges"
          size={now.seen.reading.raster}
          layers={layers.value}
          show={view.value}
          over={
            <PlaceStage
              label={mode.value === 'focus' ? 'Set the centre of interest.' : 'Choose an edge.'}
              onPlace={(place) => touch(now, place)}
            >
              <EdgeMarks
                size={now.seen.reading.raster}
                edge={(index.value !== null && decided.value?.edges?.[index.value]) || null}
                focus={focus.value}
              />
            </PlaceStage>
          }
        />
      )}
      panel={(now) => <EdgesPanel studio={studio} now={now} state={state} />}
    />
  );
}
