import { hoursInWords } from '../../../../app/model/evening-words.ts';
import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { type GivenUp, longest, workAt } from './given-up.ts';
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
    const time = longest(workAt(blown(solved.facts), level, edits).times);
    if (time > minutes) continue;
    const all = level.water ? 'with all its washes' : 'as it is, with nothing given up';
    return `With a hair dryer it would fit ${level.washes < (tried[0]?.washes ?? 0) ? 'with more washes' : all}: about ${hoursInWords(time)}.`;
  }
  const { facts: last } = await solve(taken.washes);
  const still = longest(workAt(last, taken, edits).times);
  const time = longest(workAt(blown(last), taken, edits).times);
  if (still <= minutes || time >= still) return undefined;
  return time <= minutes
    ? `With a hair dryer it would fit: about ${hoursInWords(time)}.`
    : `With a hair dryer it would take about ${hoursInWords(time)}.`;
}
