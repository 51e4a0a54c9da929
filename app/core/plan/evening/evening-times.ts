import type { Range } from '../../colour/lab.ts';
import { geometricMiddle } from '../../drying/learn-pace.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Step, WashPlan } from '../plan.ts';

/** Painting steps of one evening, at most, and of a whole plan: who has more to do hurries (own). */
export const mostInEvening = 7;
export const mostPaintingSteps = 12;
/** Steps of a plan, drying checks among them, beyond which the showy ones are left out (own). */
export const mostSteps = 14;

/** Whether a step puts paint down or takes it off: these steps tire her and the paper. */
export const isPaintingStep = ({ kind }: Pick<Step, 'kind'>): boolean =>
  kind === 'wash' ||
  kind === 'lift' ||
  kind === 'splatter' ||
  kind === 'details' ||
  kind === 'accents' ||
  kind === 'last-lights';

/** Which evening a step belongs to, from 1. */
export const eveningOf = ({ evening = 1 }: Pick<Step, 'evening'>): number => evening;

/** A step as a line of a printed plan; a drying check stands with the step it waits for. */
export interface PlanRow {
  readonly step: Step;
  /** Until the paper may be painted on again, minutes; null where nothing is waited for. */
  readonly wait: Range | null;
  /** Whether the sheet looks otherwise after it. */
  readonly changes: boolean;
}

const alike = (one: Step['after'], other: Step['after'] | undefined): boolean =>
  other !== undefined &&
  one.every((lab, i) => lab.every((part, k) => Math.abs(part - (other[i]?.[k] ?? 0)) < 0.5));

/** The plan in as few lines as it has steps that are not mere waiting. */
export function planRows({ steps, paper }: Pick<WashPlan, 'steps' | 'paper'>): PlanRow[] {
  const rows: PlanRow[] = [];
  let sheet = steps[0]?.after.map(() => paper);
  let marks = 0;
  for (const step of steps) {
    const last = rows.at(-1);
    if (step.kind === 'dry' && last && !last.wait) {
      rows[rows.length - 1] = { ...last, wait: last.step.dryMinutes };
      continue;
    }
    const lying = step.marks?.length ?? marks;
    rows.push({ step, wait: null, changes: lying > marks || !alike(step.after, sheet) });
    sheet = step.after.slice();
    marks = lying;
  }
  return rows;
}

/** Whether it is worth waiting for a dry sheet: paint or mask comes next, not only a look. */
const needsDrySheet = (step: Step): boolean => isPaintingStep(step) || step.kind === 'unmask';

const waitsOf = (rows: readonly PlanRow[]): Range[] =>
  rows.flatMap(({ wait }, i) =>
    wait && rows.slice(i + 1).some(({ step }) => needsDrySheet(step)) ? [wait] : [],
  );

/** Minutes of work, and of waiting in between, of a whole plan; no one waits for what is laid last. */
export function planMinutes({ steps, paper }: Pick<WashPlan, 'steps' | 'paper'>): {
  readonly work: Range;
  readonly wait: Range;
} {
  const sum = (ranges: readonly Range[]): Range =>
    ranges.reduce(([low, high], range): Range => [low + range[0], high + range[1]], [0, 0]);
  return {
    work: sum(steps.map(({ paintMinutes }) => paintMinutes)),
    wait: sum(waitsOf(planRows({ steps, paper }))),
  };
}

/** Minutes of one evening. The likely ones add up the middles, on a ratio scale, of every step's range. */
export interface EveningTime {
  readonly evening: number;
  readonly range: Range;
  /** Work and waiting. */
  readonly likely: number;
  /** The part of these minutes spent waiting for the sheet to dry. */
  readonly likelyWait: number;
}

/** Where nothing fits the time she has: how long the plan takes with all given up that can be. */
export const stillTakes = (times: readonly EveningTime[]): Said => ({
  say: 'evening/still-takes',
  minutes: longest(times),
  evenings: times.length,
});

/** Likely minutes of the longest evening. */
export const longest = (times: readonly EveningTime[]): number =>
  Math.max(0, ...times.map(({ likely }) => likely));

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

const sumOf = (spans: readonly Span[], pick: (minutes: Range) => number): number =>
  spans.reduce((sum, { minutes }) => sum + pick(minutes), 0);

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
      likely: sumOf(own, geometricMiddle),
      likelyWait: sumOf(waits, geometricMiddle),
    };
  });
}
