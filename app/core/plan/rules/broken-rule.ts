import type { Lab } from '../../colour/lab.ts';
import type { Border } from '../../reading/reading.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Mix, Step, WashPlan } from '../plan.ts';

/** One rule broken at one step. */
export interface BrokenRule {
  /** R1 .. R21 or a word, as listed in rules.md. */
  readonly rule: string;
  /** Key of the step at which it is said. */
  readonly step: string;
  /** For whoever looks for the fault. */
  readonly what: string;
  /** For her: what will happen. */
  readonly sentence: Said;
}

/** Limits the rules need besides the plan itself. */
export interface RuleLimits {
  /** Overlying washes the paper bears (R9). */
  readonly washes: number;
  readonly puddlesPerWash: number;
  /** A hair dryer is at hand (R14). */
  readonly hairDryer?: boolean;
  /** The borders of the reading; left out: edges are not looked at. */
  readonly borders?: readonly Border[];
  /** The sheet at the end as it was planned, per slot; left out: values are not looked at. */
  readonly planned?: readonly Lab[];
  /** Small whites to paint round, a passage; left out: they are not looked at. */
  readonly smallWhites?: ReadonlyMap<string, number>;
}

/** The parts of a plan that the rules read. */
export type RuledPlan = Pick<WashPlan, 'paper' | 'slots' | 'optics' | 'mixes' | 'steps'>;

export type Check = (plan: RuledPlan, limits: RuleLimits) => BrokenRule[];

export const broken = (
  rule: string,
  { key }: Pick<Step, 'key'>,
  what: string,
  sentence: Said,
): BrokenRule => ({ rule, step: key, what, sentence });

export const washesOf = ({ steps }: RuledPlan): Step[] =>
  steps.filter(({ kind }) => kind === 'wash');

/** A step's key is kind / passage / wash / a suffix where several steps share those three. */
export const passageOf = ({ key }: Pick<Step, 'key'>): string => key.split('/')[1] ?? '';
export const washNumberOf = ({ key }: Pick<Step, 'key'>): number => Number(key.split('/')[2]);

/** Whether a shape is broken up into small ones: spots look at home there (R21). */
export const isBrokenUp = ({ slots }: RuledPlan, index: number): boolean =>
  (slots[index]?.smallShapes ?? 0) >= 2;

/** The mixes a step lays. */
export const mixesOfStep = ({ mixes }: RuledPlan, step: Step): Mix[] =>
  mixes.filter(({ id }) => step.mixes.includes(id));

export const overlap = (one: Step, other: Step): boolean =>
  one.slots.some((i) => other.slots.includes(i));

/** The mixes that earlier washes laid on slots `step` touches. */
export function mixesUnderStep(plan: RuledPlan, step: Step): Mix[] {
  const before = plan.steps.slice(0, plan.steps.indexOf(step));
  return washesOf({ ...plan, steps: before }).flatMap((wash) => {
    const slots = step.slots.filter((i) => wash.slots.includes(i));
    return mixesOfStep(plan, wash).filter((row) =>
      slots.some(
        (i) => plan.slots[i]?.passage === row.passage && plan.slots[i]?.family === row.family,
      ),
    );
  });
}

/** Staining of every paint in some mixes: 0 lifts easily, null is unknown. */
export function stainsOf(plan: RuledPlan, rows: readonly Mix[]): (number | null)[] {
  const ids = new Set(rows.flatMap(({ parts }) => parts.map(({ paint }) => paint)));
  return plan.optics.filter(({ id }) => ids.has(id)).map(({ properties }) => properties.staining);
}
