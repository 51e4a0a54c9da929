import { hoursInWords } from '../../../../app/model/evening-words.ts';
import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { fitsIn, type GivenUp, longest, workAt } from './given-up.ts';
import type { WashSolver } from './wash-solver.ts';

const blown = (facts: PlanFacts): PlanFacts => ({
  ...facts,
  weather: { ...facts.weather, hairDryer: true },
});

/**
 * Whether a hair dryer would save her what was given up, or bring the plan nearer to her time: a sentence.
 * `tried` are the levels tried in the air she has, the last one taken; nothing where it was the first.
 */
export async function dryerInWords(
  tried: readonly GivenUp[],
  minutes: number,
  edits: readonly PlanEdit[] | undefined,
  solve: WashSolver,
): Promise<string | undefined> {
  const taken = tried.at(-1);
  const { facts } = await solve(tried[0]?.washes ?? 1);
  if (!taken || facts.weather.hairDryer || tried.length < 2) return undefined;
  for (const level of tried.slice(0, -1)) {
    const solved = await solve(level.washes);
    const { times } = workAt(blown(solved.facts), level, edits);
    if (!fitsIn(times, minutes)) continue;
    return `With a hair dryer it would fit ${savedWords(level, taken)}: about ${hoursInWords(longest(times))}.`;
  }
  const { facts: last } = await solve(taken.washes);
  const still = workAt(last, taken, edits).times;
  const { times } = workAt(blown(last), taken, edits);
  if (fitsIn(still, minutes) || longest(times) >= longest(still)) return undefined;
  return fitsIn(times, minutes)
    ? `With a hair dryer it would fit: about ${hoursInWords(longest(times))}.`
    : `With a hair dryer it would take about ${hoursInWords(longest(times))}.`;
}

/** What she need not give up then. */
function savedWords(level: GivenUp, taken: GivenUp): string {
  if (!level.water) return 'as it is, with nothing given up';
  return level.washes > taken.washes ? 'with more washes' : 'with less given up';
}
