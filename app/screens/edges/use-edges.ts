import { type ReadonlySignal, type Signal, useComputed, useSignal } from '@preact/signals';
import type { Point } from '../../core/colour/lab.ts';
import { decidedEdges, edgeReach } from '../../core/decisions/decided-reading.ts';
import { type EdgeProposals, edgeProposals } from '../../core/decisions/edge-proposals.ts';
import type { NewDecision, Painting } from '../../core/decisions/painting.ts';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import type { EdgeWish } from '../../core/reading/edges/edge.ts';
import { nearestEdge, placeOnEdge } from '../../core/reading/edges/place-on-edge.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { placeInCut, placeOnPhoto } from '../../core/reference/photo-stroke.ts';
import type { Studio } from '../../state/painting/studio.ts';

type TouchMode = 'edge' | 'focus';

export interface EdgesState {
  readonly mode: Signal<TouchMode>;
  readonly view: Signal<'grey' | 'colour'>;
  /** A place of the cut-out that tells the edge in hand from all others. */
  readonly chosen: Signal<Point | null>;
  /** Her last touch met no edge. */
  readonly missed: Signal<boolean>;
  /** The reading with what she decided; null before there is one. */
  readonly decided: ReadonlySignal<Reading | null>;
  /** The centre of interest in the cut-out; may lie outside of it. */
  readonly focus: ReadonlySignal<Point | null>;
  readonly proposals: ReadonlySignal<EdgeProposals | null>;
  /** Index of the edge in hand; null without one. */
  readonly index: ReadonlySignal<number | null>;
}

export function useEdges({ painting, seen }: Studio): EdgesState {
  const chosen = useSignal<Point | null>(null);
  const decided = useComputed(() => {
    const current = painting.value;
    const reading = seen.value?.reading;
    return current && reading ? decidedEdges(reading, current.decisions, current.reference) : null;
  });
  const focus = useComputed((): Point | null => {
    const current = painting.value;
    const place = current && lastDecision(current.decisions, 'focus')?.place;
    return place ? placeInCut(current.reference, place) : null;
  });
  return {
    mode: useSignal<TouchMode>('edge'),
    view: useSignal<'grey' | 'colour'>('grey'),
    chosen,
    missed: useSignal(false),
    decided,
    focus,
    proposals: useComputed(() => decided.value && edgeProposals(decided.value, focus.value)),
    index: useComputed(() => {
      const reading = decided.value;
      if (!reading || !chosen.value) return null;
      const { edges = [], raster } = reading;
      return nearestEdge(edges, chosen.value, raster, edgeReach)?.index ?? null;
    }),
  };
}

/** A decision about one edge of the reading, at a place of the photo where it is found again. */
export function edgeDecision(
  { reference }: Pick<Painting, 'reference'>,
  { edges = [], raster }: Pick<Reading, 'edges' | 'raster'>,
  index: number,
  wish: EdgeWish | null,
  touched?: Point,
): NewDecision | null {
  const place = placeOnEdge(edges, index, raster, touched);
  return place && { kind: 'edge', place: placeOnPhoto(reference, place), wish };
}
