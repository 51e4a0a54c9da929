import type { EveningTime } from '../../../../app/model/evening-times.ts';
import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { type EveningWork, eveningWork } from './evening-work.ts';
import type { ProposedWashes } from './propose-washes.ts';
import { countInWords, washesInWords } from './washes-why.ts';

/** What is left of a plan when something is given up for the time's sake. */
export interface GivenUp {
  readonly water?: 'less';
  /** No wash goes on wetted paper. */
  readonly paper?: 'dry';
  /** Nothing after the last wash: no lifting, splatter, accents. */
  readonly finishing?: 'none';
  readonly washes: number;
}

/** What may be given up, the least first. */
export function levelsOf({
  washes,
  isAsked,
}: Pick<ProposedWashes, 'washes' | 'isAsked'>): GivenUp[] {
  const levels: GivenUp[] = [
    { washes },
    { water: 'less', washes },
    { water: 'less', finishing: 'none', washes },
    { water: 'less', finishing: 'none', paper: 'dry', washes },
  ];
  for (let fewer = washes - 1; fewer >= 1 && !isAsked; fewer--) {
    levels.push({ water: 'less', finishing: 'none', paper: 'dry', washes: fewer });
  }
  return levels;
}

/** The facts of solved washes, laid with what water is left. */
export const withWater = (facts: PlanFacts, { water }: Pick<GivenUp, 'water'>): PlanFacts =>
  water ? { ...facts, water } : facts;

/** A sentence for everything given up; one for every wash. */
export function gaveUp({ water, finishing, paper, washes }: GivenUp, proposed: number): string[] {
  const said: string[] = [];
  if (water) said.push('Less water in the washes: they dry sooner, and stay open for less long.');
  if (finishing) {
    said.push(
      'Nothing after the last wash: set the few darkest touches in it, while you are there.',
    );
  }
  if (paper) {
    said.push(
      'All washes on dry paper: soften edges with a damp brush instead of painting wet-in-wet.',
    );
  }
  for (let fewer = proposed - 1; fewer >= washes; fewer--) {
    said.push(
      fewer === 1
        ? 'One wash for all: the values come from how thick the paint is, some stay between.'
        : `${washesInWords(fewer)} instead of ${countInWords(fewer + 1)}: the lighter values share one.`,
    );
  }
  return said;
}

/** The steps as they are with all that given up. */
export const workAt = (
  facts: PlanFacts,
  level: GivenUp,
  edits?: readonly PlanEdit[],
): EveningWork => eveningWork(withWater(facts, level), edits, level);

/** Times are told to five minutes: so near they count as fitting. */
const toldWithin = 2.5;

/** Whether the longest evening is as good as within her time. */
export const fitsIn = (times: readonly EveningTime[], minutes: number): boolean =>
  longest(times) < minutes + toldWithin;

/** Likely minutes of the longest evening. */
export const longest = (times: readonly EveningTime[]): number =>
  Math.max(0, ...times.map(({ likely }) => likely));
