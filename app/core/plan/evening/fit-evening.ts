import type { PlanEdit } from '../../decisions/plan-edit.ts';
import { type PlanWishes, wholeNumber } from '../../decisions/plan-wishes.ts';
import { fewestEveningMinutes, mostEveningMinutes } from '../../limits.ts';
import type { Said } from '../../words/plan/words.ts';
import type { EveningFit, TooLong } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import type { SolvedPalette, WashSolver } from '../solve/solve-palette.ts';
import { longest, stillTakes } from './evening-times.ts';
import {
  arrangeEvenings,
  type Concession,
  type EveningWork,
  fitsIn,
  gaveUp,
  levelsOf,
  workAt,
} from './evening-work.ts';
import type { ProposedWashes } from './propose-washes.ts';

const blown = (facts: PlanFacts): PlanFacts => ({
  ...facts,
  weather: { ...facts.weather, hairDryer: true },
});

/**
 * Whether a hair dryer would save her what was given up, or bring the plan nearer to her time: a sentence.
 * `tried` are the levels tried in the air she has, the last one taken; nothing where that fits and was the first.
 */
async function dryerHelp(
  tried: readonly Concession[],
  minutes: number,
  edits: readonly PlanEdit[] | undefined,
  solve: WashSolver,
): Promise<Said | undefined> {
  const taken = tried[tried.length - 1];
  for (const level of tried.slice(0, -1)) {
    const solved = await solve(level.washes);
    const { times } = workAt(blown(solved.facts), level, edits);
    if (!fitsIn(times, minutes)) continue;
    return { say: savedBy(level, taken), minutes: longest(times) };
  }
  const { facts } = await solve(taken.washes);
  const still = workAt(facts, taken, edits).times;
  if (fitsIn(still, minutes)) return undefined;
  const { times } = workAt(blown(facts), taken, edits);
  if (longest(times) >= longest(still)) return undefined;
  return {
    say: fitsIn(times, minutes) ? 'dryer/fits' : 'dryer/takes',
    minutes: longest(times),
  };
}

/** What of the concessions a hair dryer would make unnecessary. */
function savedBy(level: Concession, taken: Concession) {
  if (!level.water) return 'dryer/fits-whole';
  return level.washes > taken.washes ? 'dryer/fits-more-washes' : 'dryer/fits-more';
}

/** Smaller sheets that are offered, share of the area. */
const shares = [1 / 2, 1 / 4];

/** Smaller sheets on which the whole plan fits, and the likely minutes of the longest evening on them. */
function wholeOnSmaller(
  facts: PlanFacts,
  level: Concession,
  minutes: number,
  edits: readonly PlanEdit[] | undefined,
): NonNullable<EveningFit['smaller']> {
  return shares.flatMap((share) => {
    const { times } = workAt(onSmaller(facts, share), level, edits);
    return fitsIn(times, minutes) ? [{ share, minutes: longest(times) }] : [];
  });
}

/** The same picture on a smaller sheet: as many shapes, each smaller. */
function onSmaller(facts: PlanFacts, share: number): PlanFacts {
  const scale = Math.sqrt(share);
  const { widthMm, heightMm } = facts.reading.sheet;
  const sheet = { widthMm: widthMm * scale, heightMm: heightMm * scale };
  return { ...facts, reading: { ...facts.reading, sheet } };
}

/**
 * How long the plan takes with every concession made, here and on smaller sheets. For a smaller sheet the number of
 * shapes is kept, an upper bound: a new reading would find fewer. Drying does not get shorter.
 */
function tooLong(
  facts: PlanFacts,
  level: Concession,
  { times }: EveningWork,
  edits: readonly PlanEdit[] | undefined,
): TooLong {
  const smaller = shares.map((share) => {
    return { share, minutes: longest(workAt(onSmaller(facts, share), level, edits).times) };
  });
  return { text: stillTakes(times), smaller };
}

/** A plan fitted to the time she has. */
interface FittedPlan {
  readonly solved: SolvedPalette;
  readonly work: EveningWork;
  readonly washesWhy: Said;
  readonly fit: EveningFit | undefined;
}

/**
 * The plan that gives up least and fits: first less water, then small details, then wetted paper, then washes down to
 * two (unless she asked for so many), then splatter and opaque lights; never the darks. It fits where the likely minutes of every evening are no more than she has. Where nothing fits, all is
 * given up, and how long it takes even so is said. More minutes never give up more. Errors: RangeError.
 */
export async function fitEvening(
  proposed: ProposedWashes,
  { evening, edits }: PlanWishes,
  solve: WashSolver,
): Promise<FittedPlan> {
  const first = await solve(proposed.washes);
  if (evening === undefined) {
    const work = arrangeEvenings(first.facts, edits);
    return { solved: first, work, washesWhy: proposed.why, fit: undefined };
  }
  const minutes = wholeNumber(
    evening,
    fewestEveningMinutes,
    mostEveningMinutes,
    'Minutes of an evening',
  );
  const levels = levelsOf(proposed);
  let solved = first;
  let work = arrangeEvenings(first.facts, edits);
  let level = levels[0];
  const tried = [level];
  for (const next of levels.slice(1)) {
    if (fitsIn(work.times, minutes)) break;
    level = next;
    tried.push(level);
    solved = await solve(level.washes);
    work = workAt(solved.facts, level, edits);
  }
  const fits = fitsIn(work.times, minutes);
  const dryer = await dryerHelp(tried, minutes, edits, solve);
  const smaller = tried.length > 1 ? wholeOnSmaller(first.facts, levels[0], minutes, edits) : [];
  const fewer = level.washes < proposed.washes;
  return {
    solved,
    work,
    washesWhy: fewer
      ? { say: 'washes/hurried', washes: level.washes, proposed: proposed.washes }
      : proposed.why,
    fit: {
      minutes,
      evenings: work.times.map(({ range }) => range),
      gaveUp: gaveUp(level, proposed.washes),
      ...(smaller.length > 0 && { smaller }),
      ...(dryer && { dryer }),
      ...(!fits && { tooLong: tooLong(solved.facts, level, work, edits) }),
    },
  };
}
