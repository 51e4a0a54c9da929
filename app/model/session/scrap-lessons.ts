import type { PastSession } from './drying-history.ts';
import {
  type ComparedPuddle,
  comparedPuddles,
  isSamePuddle,
  type ScrapPuddle,
} from './scrap-verdicts.ts';

const beganAt = ({ events }: PastSession): number => events[0]?.wallMs ?? 0;

/** Every puddle compared in past sessions, latest session first. */
export const scrapLessons = (sessions: readonly PastSession[]): ComparedPuddle[] =>
  [...sessions]
    .sort((one, other) => beganAt(other) - beganAt(one))
    .flatMap(({ events }) => comparedPuddles(events));

/** What the same puddle did last time, when first mixed by the plan; null where it is new, or was right. */
export function lastTimeWords(
  lessons: readonly ComparedPuddle[],
  puddle: ScrapPuddle,
): string | null {
  const first = lessons.find((each) => isSamePuddle(each, puddle))?.tries[0];
  if (first === 'weaker') return 'Last time it came out weaker: take more paint.';
  if (first === 'stronger') return 'Last time it came out stronger: take more water.';
  return null;
}
