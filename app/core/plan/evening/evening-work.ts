import type { PlanEdit } from '../../decisions/plan-edit.ts';
import { defaultPaperLab } from '../../paint/colour-of-washes.ts';
import { spellCount } from '../../words/numbers.ts';
import { type OrderedWork, orderWork } from '../order-steps.ts';
import type { Step, StepKind } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { addPaperFixing } from '../steps/preparation-steps.ts';
import { cutEvenings, limitSteps, withoutKinds } from './cut-evenings.ts';
import { type EveningTime, eveningTimes } from './evening-times.ts';
import { type ProposedWashes, washesInWords } from './propose-washes.ts';

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
): string[] {
  const said: string[] = [];
  if (water) said.push('Less water in the washes: they dry sooner, and stay open for less long.');
  if (details) said.push('No small details: only the few darkest touches are set at the end.');
  if (paper) {
    said.push(
      'All washes on dry paper: soften edges with a damp brush instead of painting wet-in-wet.',
    );
  }
  for (let fewer = proposed - 1; fewer >= washes; fewer--) {
    said.push(
      `${washesInWords(fewer)} instead of ${spellCount(fewer + 1)}: the lighter values share one.`,
    );
  }
  if (finishing) said.push('No splatter, no lifting and no opaque lights.');
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

/** Likely minutes of the longest evening. */
export const longest = (times: readonly EveningTime[]): number =>
  Math.max(0, ...times.map(({ likely }) => likely));
