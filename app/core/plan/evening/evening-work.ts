import type { PlanEdit } from '../../decisions/plan-edit.ts';
import { defaultPaperLab } from '../../paint/colour-of-washes.ts';
import type { Said } from '../../words/plan/words.ts';
import { type OrderedWork, orderWork } from '../order-steps.ts';
import type { Step, StepKind } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { addPaperFixing } from '../steps/preparation-steps.ts';
import { cutEvenings, limitSteps, withoutKinds } from './cut-evenings.ts';
import { type EveningTime, eveningTimes, longest } from './evening-times.ts';
import type { ProposedWashes } from './propose-washes.ts';

/** The work in its evenings, and the time each takes. */
export interface EveningWork extends OrderedWork {
  readonly times: readonly EveningTime[];
  readonly stepsWhy: Said | undefined;
}

const withWater = (step: Step): Step => {
  if (step.kind !== 'wash' || step.waterGramsPerSquareMetre === undefined) return step;
  const said: Said = {
    say: step.technique === 'wet-in-wet' ? 'water/less-wet' : 'water/less-dry',
  };
  return { ...step, notes: [said, ...(step.notes ?? [])] };
};

/** A wash on wetted paper lies wet for longest. */
const onDryPaper = (steps: readonly Step[]): PlanEdit[] =>
  steps
    .filter(({ technique, areas }) => technique === 'wet-in-wet' || areas !== undefined)
    .map(({ key }) => ({ kind: 'technique', key, technique: 'wet on dry' }));

/** Under masking fluid no hair dryer is used (R12): its times count only once the mask is off. */
function heeded(facts: PlanFacts, edits: readonly PlanEdit[], work: OrderedWork): OrderedWork {
  const isMasked = work.steps.some(({ kind }) => kind === 'mask');
  if (!isMasked || !facts.weather.hairDryer) return work;
  return orderWork({ ...facts, noHeat: true }, edits);
}

/** The steps of a solved plan with her changes, at most twelve painting steps without them, cut into evenings. */
export function arrangeEvenings(
  facts: PlanFacts,
  hers: readonly PlanEdit[] = [],
  { details, finishing, paper }: Omit<Concession, 'water' | 'washes'> = {},
): EveningWork {
  const plain = orderWork(facts, []);
  const few = limitSteps(plain.steps);
  const given = [...(details ? detailKinds : []), ...(finishing ? showyKinds : [])];
  const edits = [
    ...few.edits,
    ...withoutKinds(plain.steps, given),
    ...(paper ? onDryPaper(plain.steps) : []),
    ...hers,
  ];
  const work = heeded(
    facts,
    edits,
    edits.length > 0 ? orderWork(facts, edits, plain.steps) : plain,
  );
  const prepared = addPaperFixing(facts, work.steps);
  const steps = cutEvenings(prepared.map(withWater));
  const times = eveningTimes({ steps, paper: defaultPaperLab });
  return { ...work, steps, times, stepsWhy: few.why };
}

/** What is left of a plan when something is given up for the time's sake. The darks never are. */
export interface Concession {
  readonly water?: 'less';
  /** No small shapes with the point of the brush; the few darkest touches stay. */
  readonly details?: 'none';
  /** No wash goes on wetted paper. */
  readonly paper?: 'dry';
  /** No splatter, no lifting, no opaque lights. */
  readonly finishing?: 'none';
  readonly washes: number;
}

const detailKinds: readonly StepKind[] = ['details'];
const showyKinds: readonly StepKind[] = ['splatter', 'lift', 'last-lights'];

/** Two washes hold three values with the paper: with fewer a picture falls flat (own). */
const fewestHurried = 2;

/** What may be given up, the least first. */
export function levelsOf({
  washes,
  isAsked,
}: Pick<ProposedWashes, 'washes' | 'isAsked'>): Concession[] {
  const hurried: Concession = { water: 'less', details: 'none', paper: 'dry', washes };
  const levels: Concession[] = [
    { washes },
    { water: 'less', washes },
    { water: 'less', details: 'none', washes },
    hurried,
  ];
  let least = washes;
  while (!isAsked && least > fewestHurried) levels.push({ ...hurried, washes: --least });
  return [...levels, { ...hurried, finishing: 'none', washes: least }];
}

/** The facts of solved washes, laid with what water is left. */
const withLessWater = (facts: PlanFacts, { water }: Pick<Concession, 'water'>): PlanFacts =>
  water ? { ...facts, water } : facts;

/** A sentence for everything given up; one for every wash. */
export function gaveUp(
  { water, details, finishing, paper, washes }: Concession,
  proposed: number,
): Said[] {
  const said: Said[] = [];
  if (water) said.push({ say: 'given-up/water' });
  if (details) said.push({ say: 'given-up/details' });
  if (paper) said.push({ say: 'given-up/wet-paper' });
  for (let fewer = proposed - 1; fewer >= washes; fewer--) {
    said.push({ say: 'given-up/wash', washes: fewer });
  }
  if (finishing) said.push({ say: 'given-up/finishing' });
  return said;
}

/** The steps as they are with all that given up. */
export const workAt = (
  facts: PlanFacts,
  level: Concession,
  edits?: readonly PlanEdit[],
): EveningWork => arrangeEvenings(withLessWater(facts, level), edits, level);

/** Times are told to five minutes: so near they count as fitting. */
const toldWithin = 2.5;

/** Whether the longest evening is as good as within her time. */
export const fitsIn = (times: readonly EveningTime[], minutes: number): boolean =>
  longest(times) < minutes + toldWithin;
