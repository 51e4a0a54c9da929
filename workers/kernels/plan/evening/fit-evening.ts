import type { PlanWishes } from '../../../../app/model/plan-wishes.ts';
import type { EveningFit } from '../../../../app/model/wash-plan.ts';
import type { SolvedPalette } from '../solve-palette.ts';
import { wholeNumber } from '../whole-number.ts';
import { dryerInWords } from './dryer-in-words.ts';
import { type EveningWork, eveningWork } from './evening-work.ts';
import { fitsIn, type GivenUp, gaveUp, levelsOf, workAt } from './given-up.ts';
import type { ProposedWashes } from './propose-washes.ts';
import { tooLong } from './too-long.ts';
import type { WashSolver } from './wash-solver.ts';
import { hurriedWhy } from './washes-why.ts';

/** A plan as it fits the time she has. */
export interface FittedPlan {
  readonly solved: SolvedPalette;
  readonly work: EveningWork;
  readonly washesWhy: string;
  readonly fit: EveningFit | undefined;
}

/** Minutes an evening may have. */
const leastMinutes = 20;
const mostMinutes = 1440;

/**
 * The plan that gives up least and fits: first less water, then what comes after the last wash, then one
 * wash after another (unless she asked for so many). It fits where the likely minutes of every evening are no more than she has. Where nothing fits, all is
 * given up, and how long it takes even so is said. More minutes never give up more. Errors: RangeError.
 */
export async function fitEvening(
  proposed: ProposedWashes,
  { evening, edits }: PlanWishes,
  solve: WashSolver,
): Promise<FittedPlan> {
  const first = await solve(proposed.washes);
  if (evening === undefined) {
    const work = eveningWork(first.facts, edits);
    return { solved: first, work, washesWhy: proposed.why, fit: undefined };
  }
  const minutes = wholeNumber(evening, leastMinutes, mostMinutes, 'Minutes of an evening');
  const levels = levelsOf(proposed);
  let solved = first;
  let work = eveningWork(first.facts, edits);
  let level = levels[0] as GivenUp;
  const tried = [level];
  for (const next of levels.slice(1)) {
    if (fitsIn(work.times, minutes)) break;
    level = next;
    tried.push(level);
    solved = await solve(level.washes);
    work = workAt(solved.facts, level, edits);
  }
  const fits = fitsIn(work.times, minutes);
  const dryer = await dryerInWords(tried, minutes, edits, solve);
  const fewer = level.washes < proposed.washes;
  return {
    solved,
    work,
    washesWhy: fewer ? hurriedWhy(level.washes, proposed.washes) : proposed.why,
    fit: {
      minutes,
      evenings: work.times.map(({ range }) => range),
      gaveUp: gaveUp(level, proposed.washes),
      ...(dryer && { dryer }),
      ...(!fits && { tooLong: tooLong(solved.facts, level, work, edits) }),
    },
  };
}
