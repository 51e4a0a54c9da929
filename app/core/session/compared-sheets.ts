import type { JudgedComparison } from '../compare/comparison.ts';
import { whitesLostIn } from '../compare/comparison.ts';
import { orderEvents } from './fold-session.ts';
import type { EventBody, SessionEvent, SheetMeasures } from './session-event.ts';

type Compared = Extract<EventBody, { kind: 'compared' }>;

/** How the sheet was photographed, as she said. */
type Taken = Pick<SheetMeasures, 'wetness' | 'bare'>;

/** Figures with no more digits than mean something: they are kept for years. */
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** What is kept of a comparison. */
export function measuresOf(
  { engine, place, whole, whites, bands, shapes, advice }: JudgedComparison,
  taken: Taken,
): SheetMeasures {
  return {
    engine,
    ...taken,
    corners: place.corners,
    within4: rounded(whole.within4, 4),
    whitesLost: whitesLostIn(whites),
    bands: bands.map(({ band, difference }) => ({ band, difference: rounded(difference, 2) })),
    slots: shapes.map(({ slot, measuredShare, difference }) => ({
      slot,
      share: rounded(measuredShare, 5),
      difference: rounded(difference, 2),
    })),
    advice: advice.map(({ mending, slot, at, difference }) => ({
      mending,
      slot,
      at,
      difference: rounded(difference, 2),
    })),
  };
}

/** A comparison as it stands in the record; `at` is wall time, ms since 1970. */
export interface ComparedNote extends Omit<Compared, 'kind'> {
  readonly event: string;
  readonly at: number;
}

/** The comparisons of a session's log, the last of every photo, in the order in which the photos were first compared. */
export function comparedSheets(events: readonly SessionEvent[]): ComparedNote[] {
  const found = new Map<string, ComparedNote>();
  for (const { id, wallMs, what } of orderEvents(events)) {
    if (what.kind !== 'compared') continue;
    const { kind: _, ...measures } = what;
    found.set(what.photoId, { ...measures, event: id, at: wallMs });
  }
  return [...found.values()];
}
