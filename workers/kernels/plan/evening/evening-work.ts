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

const lessWater = {
  dry: 'Less water than usual: let the brush drip off, lay it once and lift the bead, so that it dries sooner.',
  wet: 'Less water than usual: wet the sheet once and thinly, and let it sink to a soft sheen before you paint.',
} as const;

const withWater = (step: Step): Step => {
  if (step.kind !== 'wash' || step.waterGramsPerSquareMetre === undefined) return step;
  const said = lessWater[step.technique === 'wet-in-wet' ? 'wet' : 'dry'];
  return { ...step, cautions: [said, ...step.cautions] };
};

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
