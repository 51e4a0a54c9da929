import { type EveningTime, eveningTimes } from '../../../../app/model/evening-times.ts';
import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';
import { defaultPaperLab } from '../../optics/default-paper.ts';
import { type OrderedWork, orderedWork } from '../ordered-work.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { preparedSteps } from '../prepared-steps.ts';
import { cutEvenings } from './cut-evenings.ts';
import { fewEnough, withoutFinishing } from './few-enough.ts';
import type { GivenUp } from './given-up.ts';

/** The work in its evenings, and the time each takes. */
export interface EveningWork extends OrderedWork {
  readonly times: readonly EveningTime[];
  readonly stepsWhy: string | undefined;
}

const lessWater =
  'Less water than usual: let the brush drip off, lay it once and lift the bead, so that it dries sooner.';

const withWater = (step: Step): Step =>
  step.kind === 'wash' && step.waterGramsPerSquareMetre !== undefined
    ? { ...step, cautions: [lessWater, ...step.cautions] }
    : step;

/** A wash on wetted paper lies wet for longest. */
const onDryPaper = (steps: readonly Step[]): PlanEdit[] =>
  steps
    .filter(({ technique }) => technique === 'wet-in-wet')
    .map(({ key }) => ({ kind: 'technique', key, technique: 'wet on dry' }));

/** Under masking fluid no hair dryer is used (R12): its times count only once the mask is off. */
function heeded(facts: PlanFacts, edits: readonly PlanEdit[], work: OrderedWork): OrderedWork {
  const isMasked = work.steps.some(({ kind }) => kind === 'mask');
  if (!isMasked || !facts.weather.hairDryer) return work;
  return orderedWork({ ...facts, noHeat: true }, edits);
}

/** The steps of a solved plan with her changes, at most twelve painting steps without them, cut into evenings. */
export function eveningWork(
  facts: PlanFacts,
  hers: readonly PlanEdit[] = [],
  { finishing, paper }: Pick<GivenUp, 'finishing' | 'paper'> = {},
): EveningWork {
  const plain = orderedWork(facts, []);
  const few = finishing ? withoutFinishing(plain.steps) : fewEnough(plain.steps);
  const edits = [...few.edits, ...(paper ? onDryPaper(plain.steps) : []), ...hers];
  const work = heeded(facts, edits, edits.length > 0 ? orderedWork(facts, edits) : plain);
  const prepared = preparedSteps(facts, work.steps);
  const steps = cutEvenings(prepared.map(withWater));
  const times = eveningTimes({ steps, paper: defaultPaperLab });
  return { ...work, steps, times, stepsWhy: few.why };
}
