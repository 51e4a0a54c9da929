import type { Range } from '../../../app/model/lab.ts';
import type { PlanFacts } from './plan-facts.ts';

/** A quarter sheet, 381 x 279 mm: what the minutes of handling are reckoned for, mm2. */
const quarterSheet = 381 * 279;

/**
 * How long handling takes beside a quarter sheet: with the side of the sheet, not its area. A postcard takes about
 * two fifths, a full sheet twice as long, and no sheet takes less than a third. Own estimate, no source.
 */
export function sheetPace({ reading }: Pick<PlanFacts, 'reading'>): number {
  const { widthMm, heightMm } = reading.sheet;
  return Math.min(2, Math.max(1 / 3, Math.sqrt((widthMm * heightMm) / quarterSheet)));
}

/** Minutes of handling a quarter sheet, as they are on this one; never under a minute, nor without a range. */
export function minutesOnSheet(facts: Pick<PlanFacts, 'reading'>, [low, high]: Range): Range {
  const pace = sheetPace(facts);
  const least = Math.max(1, Math.round(low * pace));
  return [least, Math.max(least + 1, Math.round(high * pace))];
}
