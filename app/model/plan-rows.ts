import { isPaintingStep } from './evening-steps.ts';
import type { Range } from './lab.ts';
import type { Step, WashPlan } from './wash-plan.ts';

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
  for (const step of steps) {
    const last = rows.at(-1);
    if (step.kind === 'dry' && last && !last.wait) {
      rows[rows.length - 1] = { ...last, wait: last.step.dryMinutes };
      continue;
    }
    rows.push({ step, wait: null, changes: !alike(step.after, sheet) });
    sheet = step.after.slice();
  }
  return rows;
}

/** Whether it is worth waiting for a dry sheet: paint or mask comes next, not only a look. */
export const needsDrySheet = (step: Step): boolean =>
  isPaintingStep(step) || step.kind === 'unmask';

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
