import { type ReadonlySignal, type Signal, useComputed, useSignal } from '@preact/signals';
import { decidedEdges } from '../../model/decided-edges.ts';
import { type EdgeProposals, edgeProposals } from '../../model/edge-proposals.ts';
import type { Point } from '../../model/lab.ts';
import type { Reading } from '../../model/reading.ts';
import { lastDecision } from '../../model/standing-decisions.ts';
import { placeInCut } from '../../model/stroke-on-photo.ts';
import type { Studio } from '../../state/studio.ts';

export type TouchMode = 'edge' | 'focus';

/** The edge in hand: its index in the reading it was chosen in, and where it was touched. */
export interface Chosen {
  readonly of: Reading;
  readonly index: number;
  readonly touched?: Point;
}

export interface EdgesState {
  readonly mode: Signal<TouchMode>;
  readonly view: Signal<'grey' | 'colour'>;
  readonly chosen: Signal<Chosen | null>;
  /** Her last touch met no edge. */
  readonly missed: Signal<boolean>;
  /** The reading with what she decided; null before there is one. */
  readonly decided: ReadonlySignal<Reading | null>;
  /** The centre of interest in the cut-out; may lie outside of it. */
  readonly focus: ReadonlySignal<Point | null>;
  readonly proposals: ReadonlySignal<EdgeProposals | null>;
  /** Index of the chosen edge in the reading shown now. */
  readonly index: ReadonlySignal<number | null>;
}

export function useEdges({ painting, seen }: Studio): EdgesState {
  const chosen = useSignal<Chosen | null>(null);
  const decided = useComputed(() => {
    const of = painting.value;
    const reading = seen.value?.reading;
    return of && reading ? decidedEdges(reading, of.decisions, of.reference) : null;
  });
  const focus = useComputed((): Point | null => {
    const of = painting.value;
    const place = of && lastDecision(of.decisions, 'focus')?.place;
    return place ? placeInCut(of.reference, place) : null;
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
      const now = chosen.value;
      return now && now.of === seen.value?.reading ? now.index : null;
    }),
  };
}
