import { whitesLostIn } from '../compare/compare-words.ts';
import { type JudgedComparison, lightnessVerdict } from '../compare/comparison.ts';
import { joinWords, pluralize, spellCount } from '../words/numbers.ts';
import { bandWord, formatPercent } from '../words/reading-words.ts';
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

/** 'Good: left as it was. 97 % of the sheet had its planned value.' or what was off. */
export function measuresInWords(
  { within4, whitesLost, bands, advice }: SheetMeasures,
  bandCount: number,
): string {
  const share = `${formatPercent(within4)} of the sheet had its planned value`;
  const off = bands.flatMap(({ band, difference }) => {
    const verdict = lightnessVerdict(difference);
    return verdict === 'same' ? [] : [`the ${bandWord(band, bandCount)} values ${verdict}`];
  });
  const lost =
    whitesLost > 0 ? [`${spellCount(whitesLost)} ${pluralize(whitesLost, 'white')} lost`] : [];
  const rest = [...off, ...lost];
  if (rest.length > 0) return `${share}; ${joinWords(rest)}.`;
  return advice.length === 0 ? `Good: left as it was. ${share}.` : `${share}.`;
}
