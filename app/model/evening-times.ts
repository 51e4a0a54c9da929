import { middleOf } from './drying/taught-range.ts';
import { eveningOf } from './evening-steps.ts';
import type { Range } from './lab.ts';
import { needsDrySheet, planRows } from './plan-rows.ts';
import type { WashPlan } from './wash-plan.ts';

/** Minutes of one evening. The likely ones add up the middles, on a ratio scale, of every step's range. */
export interface EveningTime {
  readonly evening: number;
  readonly range: Range;
  /** Work and waiting. */
  readonly likely: number;
  /** Of it waiting for the sheet. */
  readonly likelyWait: number;
}

/** A span of work, or of waiting, and the evening it falls in. */
interface Span {
  readonly evening: number;
  readonly minutes: Range;
  readonly isWait: boolean;
}

function spansOf(plan: Pick<WashPlan, 'steps' | 'paper'>): Span[] {
  const rows = planRows(plan);
  const waits = rows.flatMap(({ step, wait }, i): Span[] => {
    const evening = eveningOf(step);
    const goesOn = rows
      .slice(i + 1)
      .some(({ step: later }) => needsDrySheet(later) && eveningOf(later) === evening);
    return wait && goesOn ? [{ evening, minutes: wait, isWait: true }] : [];
  });
  const work = plan.steps.map((step): Span => {
    return { evening: eveningOf(step), minutes: step.paintMinutes, isWait: false };
  });
  return [...work, ...waits];
}

const sumOf = (spans: readonly Span[], of: (minutes: Range) => number): number =>
  spans.reduce((sum, { minutes }) => sum + of(minutes), 0);

/**
 * Minutes of every evening of a plan, first evening first. What is laid last in an evening dries without her: no
 * one waits for it, and the last look can be taken the day after.
 */
export function eveningTimes(plan: Pick<WashPlan, 'steps' | 'paper'>): EveningTime[] {
  const spans = spansOf(plan);
  const evenings = [...new Set(spans.map(({ evening }) => evening))].sort((a, b) => a - b);
  return evenings.map((evening) => {
    const own = spans.filter((span) => span.evening === evening);
    const waits = own.filter(({ isWait }) => isWait);
    return {
      evening,
      range: [sumOf(own, ([low]) => low), sumOf(own, ([, high]) => high)],
      likely: sumOf(own, middleOf),
      likelyWait: sumOf(waits, middleOf),
    };
  });
}
