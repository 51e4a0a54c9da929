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

/** `steps` are those of the plan before her own changes: what she adds is hers. */
export function fewEnough(steps: readonly Step[]): FewEnough {
  const tooMany = steps.filter(isPaintingStep).length - mostPaintingSteps;
  if (tooMany <= 0) return { edits: [], why: undefined };
  const out = spared
    .flatMap((kind) => steps.filter((step) => step.kind === kind))
    .slice(0, tooMany);
  const edits = out.map(({ key }): PlanEdit => ({ kind: 'skip', key, skipped: true }));
  const titles = out.map(({ title }) => title.toLowerCase()).join(' and ');
  return out.length === 0
    ? { edits, why: undefined }
    : { edits, why: `Left out, as ${mostPaintingSteps} painting steps are enough: ${titles}.` };
}
