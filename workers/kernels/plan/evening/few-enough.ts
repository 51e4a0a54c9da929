import { isPaintingStep, mostPaintingSteps } from '../../../../app/model/evening-steps.ts';
import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import type { Step, StepKind } from '../../../../app/model/wash-plan.ts';

/** What a picture can do without, the least useful first. Last lights stay: their whites were painted over. */
const spared: readonly StepKind[] = ['splatter', 'lift', 'accents'];

/** Finishing steps left out so that there are at most twelve painting steps. */
export interface FewEnough {
  readonly edits: readonly PlanEdit[];
  /** What is left out and why, a sentence; undefined where nothing is. */
  readonly why: string | undefined;
}

const sparedOf = (steps: readonly Step[]): Step[] =>
  spared.flatMap((kind) => steps.filter((step) => step.kind === kind));

const leftOut = (steps: readonly Step[]): PlanEdit[] =>
  steps.map(({ key }) => ({ kind: 'skip', key, skipped: true }));

/** All of it left out, where time is short: that is said with what else is given up. */
export const withoutFinishing = (steps: readonly Step[]): FewEnough => ({
  edits: leftOut(sparedOf(steps)),
  why: undefined,
});

/** `steps` are those of the plan before her own changes: what she adds is hers. */
export function fewEnough(steps: readonly Step[]): FewEnough {
  const tooMany = steps.filter(isPaintingStep).length - mostPaintingSteps;
  if (tooMany <= 0) return { edits: [], why: undefined };
  const out = sparedOf(steps).slice(0, tooMany);
  const edits = leftOut(out);
  const titles = out.map(({ title }) => title.toLowerCase()).join(' and ');
  return out.length === 0
    ? { edits, why: undefined }
    : { edits, why: `Left out, as ${mostPaintingSteps} painting steps are enough: ${titles}.` };
}
