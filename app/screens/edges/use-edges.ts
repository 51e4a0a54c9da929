import { type ReadonlySignal, type Signal, useComputed, useSignal } from '@preact/signals';
import type { Point } from '../../core/colour/lab.ts';
import { decidedEdges, edgeReach } from '../../core/decisions/decided-reading.ts';
import {
  type EdgeProposals,
  edgeProposals,
  proposalLimits,
} from '../../core/decisions/edge-proposals.ts';
import type { NewDecision, Painting } from '../../core/decisions/painting.ts';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import type { Edge, EdgeWish } from '../../core/reading/edges/edge.ts';
import { nearestEdge, placeOnEdge } from '../../core/reading/edges/place-on-edge.ts';
import { stretchesOf, wholeEdges } from '../../core/reading/edges/whole-edges.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { placeInCut, placeOnPhoto } from '../../core/reference/photo-stroke.ts';
import type { Studio } from '../../state/painting/studio.ts';

type TouchMode = 'edge' | 'focus';

export interface EdgesState {
  /** What a touch means: where the eye should rest, until that is said or she asks otherwise. */
  readonly mode: ReadonlySignal<TouchMode>;
  /** What she asked a touch to mean; null: nothing. */
  readonly asked: Signal<TouchMode | null>;
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
  /** Index of the stretch she touched; null without one. */
  readonly index: ReadonlySignal<number | null>;
  /** For every edge the least index of what is one edge to the eye: see `wholeEdges`. */
  readonly wholes: ReadonlySignal<Int32Array>;
  /** Indices of the stretches that are drawn: those of whole edges worth a stroke, and those she decided. */
  readonly longEnough: ReadonlySignal<readonly number[]>;
  /** All stretches of the edge in hand. */
  readonly inHand: ReadonlySignal<readonly Edge[]>;
}

export function useEdges({ painting, seen }: Studio): EdgesState {
  const chosen = useSignal<Point | null>(null);
  const asked = useSignal<TouchMode | null>(null);
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
  const index = useComputed(() => {
    const reading = decided.value;
    if (!reading || !chosen.value) return null;
    const { edges = [], raster } = reading;
    return nearestEdge(edges, chosen.value, raster, edgeReach)?.index ?? null;
  });
  // Decisions change no edge's course.
  const wholes = useComputed(() => {
    const reading = seen.value?.reading;
    return reading ? wholeEdges(reading.edges ?? [], reading.raster) : new Int32Array();
  });
  const longEnough = useComputed(() => {
    const edges = decided.value?.edges ?? [];
    const lengths = new Map<number | undefined, number>();
    edges.forEach(({ lengthMm }, i) => {
      const whole = wholes.value[i];
      lengths.set(whole, (lengths.get(whole) ?? 0) + lengthMm);
    });
    return [...edges.keys()].filter(
      (i) => edges[i]?.wish || (lengths.get(wholes.value[i]) ?? 0) >= proposalLimits.leastMm,
    );
  });
  return {
    asked,
    mode: useComputed(() => asked.value ?? (focus.value ? 'edge' : 'focus')),
    view: useSignal<'grey' | 'colour'>('grey'),
    chosen,
    missed: useSignal(false),
    decided,
    focus,
    proposals: useComputed(() => {
      const values = seen.value?.lightnessMap;
      const reading = decided.value;
      if (!reading) return null;
      return edgeProposals(reading, focus.value, values ? { ...reading.raster, values } : null);
    }),
    index,
    wholes,
    longEnough,
    inHand: useComputed(() => {
      const edges = decided.value?.edges ?? [];
      if (index.value === null) return [];
      return stretchesOf(wholes.value, index.value).flatMap((i) => edges[i] ?? []);
    }),
  };
}

/** A decision about one whole edge of the reading, at a place of the photo where it is found again. */
export function edgeDecision(
  { reference }: Pick<Painting, 'reference'>,
  { edges = [], raster }: Pick<Reading, 'edges' | 'raster'>,
  index: number,
  wish: EdgeWish | null,
  touched?: Point,
): NewDecision | null {
  const place = placeOnEdge(edges, index, raster, touched);
  return place && { kind: 'edge', place: placeOnPhoto(reference, place), wish, whole: true };
}
