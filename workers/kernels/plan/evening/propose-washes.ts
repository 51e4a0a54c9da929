import { usualPaper } from '../../../../app/model/drying/paper-choice.ts';
import { mostPaintingSteps } from '../../../../app/model/evening-steps.ts';
import type { PlanWishes } from '../../../../app/model/plan-wishes.ts';
import type { Slot } from '../../../../app/model/slot.ts';
import { washesBorne } from '../../../../app/model/washes-borne.ts';
import { paintedBands } from '../wash-bands.ts';
import { wholeNumber } from '../whole-number.ts';
import type { WashSolver } from './wash-solver.ts';
import { type WashesReach, washesReach } from './washes-reach.ts';
import { askedWhy, enoughWhy, fewValuesWhy, moreWhy, paperWhy } from './washes-why.ts';

export interface ProposedWashes {
  readonly washes: number;
  /** Why, a sentence. */
  readonly why: string;
  /** She asked for this number: it is not to be changed for the time's sake. */
  readonly isAsked: boolean;
}

/** A value missed by less is reached, L* (a quarter of a Munsell value); a colour likewise, CIEDE2000 (own). */
const reachedWithin = { value: 2.5, colour: 2.8 } as const;

/** One more wash has to bring the worst value, or the colours, nearer by this (own), or it only tires the paper. */
const worthAWash = 0.5;

const missOf = ({ worst }: WashesReach): number => worst?.missed ?? 0;

/** A band may be right on the whole and many of its shapes wrong: 95 % of the area is to be within 5 L* (issue 5). */
const isValueMissed = (reach: WashesReach): boolean =>
  missOf(reach) > reachedWithin.value || reach.within5 < 0.95;

const isReached = (reach: WashesReach): boolean =>
  !isValueMissed(reach) && reach.colour <= reachedWithin.colour;

function isWorthIt(few: WashesReach, more: WashesReach): boolean {
  if (isValueMissed(few)) {
    return missOf(more) <= missOf(few) - worthAWash || more.within5 >= few.within5 + 0.02;
  }
  return more.colour <= few.colour - worthAWash && !isValueMissed(more);
}

/** Painted passages, and the values of the one that has most. */
function paintedValues(slots: readonly Slot[]): { most: number; passages: number } {
  const painted = slots.filter(({ reserve, share }) => !reserve && share > 0);
  const passages = [...new Set(painted.map(({ passage }) => passage))];
  const counts = passages.map(
    (name) => paintedBands(painted.filter(({ passage }) => passage === name)).length,
  );
  return { most: Math.max(0, ...counts), passages: passages.length };
}

/** So many washes leave room for the darkest touches and the last lights (own figure). */
const mostWashSteps = mostPaintingSteps - 2;

/**
 * How many washes over each other, and why: hers, or the least number (two at least, where there are two values)
 * with which every value is reached and which the paper bears (R9). Looks at two numbers at most: two values
 * share a wash as one puddle at two strengths, so half as many washes as values is where it begins.
 */
export async function proposeWashes(
  slots: readonly Slot[],
  bandCount: number,
  { washes: asked, paper = usualPaper }: PlanWishes,
  solve: WashSolver,
): Promise<ProposedWashes> {
  const { most, passages } = paintedValues(slots);
  const room = Math.max(1, Math.floor(mostWashSteps / Math.max(1, passages)));
  const borne = washesBorne(paper);
  if (asked !== undefined) {
    const wanted = wholeNumber(asked, 1, 8, 'Washes over each other');
    const washes = Math.min(wanted, Math.max(1, most), room);
    return { washes, why: askedWhy(washes, wanted, most, paper), isAsked: true };
  }
  const atMost = Math.min(borne, room);
  if (most <= 2) return { washes: Math.max(1, most), why: fewValuesWhy(most), isAsked: false };
  const start = Math.min(Math.max(2, Math.ceil(most / 2)), atMost);
  const few = washesReach((await solve(start)).facts);
  const proposal = (washes: number, why: string): ProposedWashes => ({
    washes,
    why,
    isAsked: false,
  });
  if (isReached(few)) return proposal(start, enoughWhy(start));
  if (start + 1 > Math.min(atMost, most)) return proposal(start, paperWhy(start, borne, paper));
  const more = washesReach((await solve(start + 1)).facts);
  return isWorthIt(few, more)
    ? proposal(start + 1, moreWhy(start + 1, few, bandCount, isValueMissed(few)))
    : proposal(start, enoughWhy(start, false));
}
