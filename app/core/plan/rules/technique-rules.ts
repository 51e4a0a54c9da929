import { mostNegativeRounds } from '../../limits.ts';
import type { Said } from '../../words/plan/words.ts';
import type { SmallTechnique, Step } from '../plan.ts';
import { mostSmallTechniques } from '../techniques/step-handling.ts';
import {
  type BrokenRule,
  broken,
  type Check,
  isBrokenUp,
  mixesOfStep,
  passageOf,
  type RuledPlan,
  stainsOf,
} from './broken-rule.ts';

const painting: ReadonlySet<string> = new Set([
  'wash',
  'lift',
  'splatter',
  'details',
  'accents',
  'last-lights',
]);

/** Paper states a technique can do with. */
const papers: Record<SmallTechnique['technique'], readonly SmallTechnique['paper'][]> = {
  'graded wash': ['shiny', 'bone dry'],
  merging: ['shiny', 'satin'],
  charging: ['shiny', 'satin'],
  'negative painting': ['bone dry'],
  'dry brush': ['bone dry'],
  'water drops': ['satin'],
  lifting: ['damp'],
  scraping: ['bone dry'],
};

/** Its window lies where its paper state does on the clocks of the step. */
function inTime(
  { minutes, paper, technique }: SmallTechnique,
  { shineMinutes, dryMinutes }: Step,
): boolean {
  if (minutes === null) return paper === 'bone dry';
  const [from, to] = minutes;
  if (from < 0 || from > to) return false;
  if (paper === 'damp') return from >= shineMinutes[0] && to <= Math.max(from, dryMinutes[0]);
  const wet = paper === 'shiny' || paper === 'satin' || technique === 'graded wash';
  return wet && to <= shineMinutes[1];
}

/** What is wrong with one technique in a step; null where nothing is. */
function fault(
  plan: RuledPlan,
  step: Step,
  smallTechnique: SmallTechnique,
): [rule: string, what: string] | null {
  const { technique, paper, text } = smallTechnique;
  if (!papers[technique].includes(paper)) return ['R5', `${technique} on ${paper} paper`];
  if (!inTime(smallTechnique, step))
    return ['R8', `${technique} at ${smallTechnique.minutes?.join('..')} min`];
  if (text === '') return ['R15', `${technique} says nothing`];
  if (technique === 'water drops') {
    const isBroken = step.slots.some((i) => isBrokenUp(plan, i));
    if (!isBroken || passageOf(step) === 'subject') return ['R21', 'water drops in a plain area'];
  }
  if (technique === 'lifting') {
    const lifts = mixesOfStep(plan, step).some((row) =>
      stainsOf(plan, [row]).every((one) => one === 0),
    );
    if (!lifts) return ['R11', 'lifting in staining paint'];
  }
  if (technique === 'scraping' && step.kind !== 'last-lights') return ['R13', 'scraping too early'];
  return null;
}

/** Internal invariant: no edit of hers can break it. */
const ours: Said = { say: 'step/incomplete' };

/** R5, R8, R11, R13, R15, R20, R21 of the smaller techniques; R15 of brush and board. */
export const techniquesInOrder: Check = (plan) => {
  const rounds = new Map<string, number>();
  return plan.steps.flatMap((step): BrokenRule[] => {
    const techniques = step.touches ?? [];
    const found = techniques.flatMap((smallTechnique) => {
      const one = fault(plan, step, smallTechnique);
      return one ? [broken(one[0], step, `${step.key}: ${one[1]}`, ours)] : [];
    });
    if (techniques.length > mostSmallTechniques) {
      found.push(broken('R15', step, `${step.key}: ${techniques.length} techniques`, ours));
    }
    if (techniques.some(({ technique }) => technique === 'negative painting')) {
      const count = (rounds.get(passageOf(step)) ?? 0) + 1;
      rounds.set(passageOf(step), count);
      if (count > mostNegativeRounds)
        found.push(broken('R20', step, `${step.key}: round ${count}`, ours));
    }
    const dry = step.technique === 'scraping';
    if (painting.has(step.kind) && (!(step.brush || dry) || !step.board)) {
      found.push(broken('R15', step, `${step.key} names no brush or board`, ours));
    }
    return found;
  });
};
