import { useComputed } from '@preact/signals';
import type { Point } from '../../core/colour/lab.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import type { Edge } from '../../core/reading/edges/edge.ts';
import { nearestEdge, placeOnEdge } from '../../core/reading/edges/place-on-edge.ts';
import { placeOnPhoto } from '../../core/reference/photo-stroke.ts';
import { bitmapLayer, type Layer } from '../../drawing/layers.ts';
import { edgeLayer } from '../../drawing/line-layers.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { type DecisionContext, DecisionScreen } from '../../ui/layout/decision-screen.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import drawn from '../../ui/pointer/drawn-stroke.module.css';
import { linePath } from '../../ui/pointer/drawn-stroke.tsx';
import { PlaceStage } from '../../ui/pointer/place-stage.tsx';
import { EdgesPanel } from './edges-panel.tsx';
import styles from './edges-screen.module.css';
import { useEdges } from './use-edges.ts';

/** A touch this near to an edge means it, as a share of the long side: about half a fingertip on a phone. */
const touchReach = 0.035;

/** Every edge of the picture: what it is, what becomes of it, and what is proposed round the focus. */
export function EdgesScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const state = useEdges(studio);
  const { mode, view, chosen, missed, decided, focus, inHand, longEnough } = state;
  const layers = useComputed((): Record<string, Layer> => {
    const pictures = studio.pictures.value;
    const edges = longEnough.value.flatMap((i) => decided.value?.edges?.[i] ?? []);
    if (!pictures) return {};
    return {
      grey: edgeLayer(bitmapLayer(pictures.grey), edges),
      colour: edgeLayer(bitmapLayer(pictures.reference), edges),
    };
  });
  const touch = ({ painting, seen }: DecisionContext, place: Point): void => {
    missed.value = false;
    if (mode.value === 'focus') {
      void studio.decide({ kind: 'focus', place: placeOnPhoto(painting.reference, place) });
      return;
    }
    const { edges = [], raster } = seen.reading;
    // Only what is drawn can be meant.
    const drawn = longEnough.value;
    const near = nearestEdge(
      drawn.flatMap((i) => edges[i] ?? []),
      place,
      raster,
      touchReach,
    );
    missed.value = near === null;
    chosen.value = near && placeOnEdge(edges, drawn[near.index] ?? 0, raster, near.point);
  };
  return (
    <DecisionScreen
      studio={studio}
      paintingId={paintingId}
      name="edges"
      title="Edges"
      kinds={['edge', 'focus']}
      picture={(context) => (
        <Picture
          label="Your reference with its edges"
          size={context.seen.reading.raster}
          layers={layers.value}
          show={view.value}
          over={
            <PlaceStage
              label={mode.value === 'focus' ? 'Set the centre of interest.' : 'Choose an edge.'}
              onPlace={(place) => touch(context, place)}
            >
              <EdgeMarks
                size={context.seen.reading.raster}
                edges={inHand.value}
                focus={focus.value}
              />
            </PlaceStage>
          }
        />
      )}
      panel={(context) => <EdgesPanel studio={studio} context={context} state={state} />}
    />
  );
}

interface EdgeMarksProps {
  size: PixelSize;
  /** The stretches of the edge in hand. */
  edges: readonly Edge[];
  focus: Point | null;
}

const inside = (share: number): boolean => share >= 0 && share <= 1;

/** Over the picture: the edge in hand, thick, and the sign of the centre of interest. */
function EdgeMarks({ size, edges, focus }: EdgeMarksProps) {
  return (
    <>
      {edges.length > 0 && (
        <svg
          class={drawn.lines}
          viewBox={`0 0 ${size.width} ${size.height}`}
          preserveAspectRatio="none"
          aria-hidden="true"
          data-testid="chosen-edge"
        >
          {(['outline', 'casing', 'ink'] as const).map((ink) => (
            <path
              key={ink}
              class={styles[ink]}
              d={edges.map(({ path }) => linePath(path, size)).join('')}
            />
          ))}
        </svg>
      )}
      {focus?.every(inside) && (
        <svg
          class={styles.focus}
          style={{ left: `${focus[0] * 100}%`, top: `${focus[1] * 100}%` }}
          viewBox="-24 -24 48 48"
          aria-hidden="true"
          data-testid="focus-mark"
        >
          {(['casing', 'ink'] as const).map((ink) => (
            <path
              key={ink}
              data-ink={ink}
              d="M-21 0A34 34 0 0 1 21 0A34 34 0 0 1 -21 0M-6 0A6 6 0 0 1 6 0A6 6 0 0 1 -6 0"
            />
          ))}
        </svg>
      )}
    </>
  );
}
