import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import { layeredSolve } from './layered-solve.ts';
import type { PlanCheckpoint } from './plan-checkpoint.ts';
import type { PlanFacts, SolvedPassage } from './plan-facts.ts';
import { PuddleNames } from './puddle-names.ts';
import { wholeNumber } from './whole-number.ts';

const proposedWashes = 3;
const proposedPuddles = 3;

/** Every passage solved wash over wash; those without anything to paint are left out. The second half of the planning. */
export async function solvePassages(
  facts: Pick<PlanFacts, 'slots' | 'paints'>,
  wishes: PlanWishes,
  checkpoint: PlanCheckpoint,
): Promise<SolvedPassage[]> {
  const passages = [...new Set(facts.slots.map((slot) => slot.passage))];
  const input = {
    ...facts,
    washes: wholeNumber(wishes.washes ?? proposedWashes, 1, 8, 'Washes over each other'),
    puddles: wholeNumber(wishes.puddlesPerWash ?? proposedPuddles, 1, 8, 'Puddles in one wash'),
    names: new PuddleNames(),
  };
  const solved: SolvedPassage[] = [];
  for (const [n, passage] of passages.entries()) {
    solved.push(
      await layeredSolve(passage, input, (part) =>
        checkpoint(0.5 + (0.5 * (n + Math.min(1, part))) / passages.length, 'washes'),
      ),
    );
  }
  return solved.filter((passage) => passage.washes.length > 0);
}
