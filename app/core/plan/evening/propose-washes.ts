import type { Lab } from '../../colour/lab.ts';
import { type PlanWishes, wholeNumber } from '../../decisions/plan-wishes.ts';
import {
  maxWashes,
  type PaperChoice,
  paperInWords,
  usualPaper,
} from '../../drying/paper-choice.ts';
import { lightnessOfOneValue, mostWashes, proposedWashes } from '../../limits.ts';
import type { Slot } from '../../reading/slot.ts';
import { capitalize, pluralize, spellCount, spellOrdinal } from '../../words/numbers.ts';
import { bandWord } from '../../words/reading-words.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { planQuality } from '../reach/plan-quality.ts';
import { paintedBands } from '../solve/family-work.ts';
import type { WashSolver } from '../solve/solve-palette.ts';
import { mostPaintingSteps } from './evening-times.ts';

/** How far a painted band ends from its planned value. */
interface BandMiss {
  readonly band: number;
  /** Area-weighted mean of |dL*| over its slots. */
  readonly missed: number;
  /** The same with its sign: above 0 it stays too light. */
  readonly tooLight: number;
}

/** How near solved washes come to what was planned. */
interface WashesReach {
  /** The band that is missed by most; undefined where nothing is painted. */
  readonly worst: BandMiss | undefined;
  /** Area-weighted mean CIEDE2000 over all painted slots. */
  readonly colour: number;
  /** Share of the painted area within 5 L*, 0..1. */
  readonly within5: number;
}

type Solved = Pick<PlanFacts, 'slots' | 'passages'>;

/** Dry colour of every slot after the last wash; undefined where nothing was painted. */
function lastColours({ slots, passages }: Solved): (Lab | undefined)[] {
  const last: (Lab | undefined)[] = slots.map(() => undefined);
  for (const wash of passages.flatMap(({ washes }) => washes)) {
    for (const [i, slot] of wash.slots.entries()) last[slot] = wash.after[i];
  }
  return last;
}

/** What the washes of a solved plan reach, before anything else is done to the sheet. */
export function washesReach(solved: Solved): WashesReach {
  const { slots } = solved;
  const last = lastColours(solved);
  const sums = new Map<number, { area: number; missed: number; tooLight: number }>();
  for (const [i, { band, share, target }] of slots.entries()) {
    const got = last[i];
    if (!got) continue;
    const sum = sums.get(band) ?? { area: 0, missed: 0, tooLight: 0 };
    const area = Math.max(share, 1e-6);
    const by = got[0] - target[0];
    sums.set(band, {
      area: sum.area + area,
      missed: sum.missed + area * Math.abs(by),
      tooLight: sum.tooLight + area * by,
    });
  }
  const misses = [...sums].map(([band, { area, missed, tooLight }]): BandMiss => {
    return { band, missed: missed / area, tooLight: tooLight / area };
  });
  misses.sort((one, two) => two.missed - one.missed || one.band - two.band);
  const { colour, within5 } = planQuality(
    slots,
    slots.map(({ target }, i) => last[i] ?? target),
  );
  return { worst: misses[0], colour, within5 };
}

/** 'Two washes'. */
export const washesInWords = (count: number): string =>
  `${capitalize(spellCount(count))} ${pluralize(count, 'wash', 'washes')}`;

const next = (count: number): string => (count < 6 ? `a ${spellOrdinal(count + 1)}` : 'one more');

/** One or two values to paint. */
const fewValuesWhy = (values: number): string =>
  values < 2
    ? 'One wash: there is one value to paint beside the white of the paper.'
    : 'Two washes: one for each of the two values.';

/** Why the proposed number suffices: all values are reached, or one more wash would not come nearer. */
const enoughWhy = (count: number, isReached = true): string =>
  isReached
    ? `${washesInWords(count)}: the darks reach their value in the last; ${next(count)} would only overwork the paper.`
    : `${washesInWords(count)}: ${next(count)} would tire the paper and come no nearer to the values.`;

/** By how much a value is missed: 'half a value too light'. */
function missInWords({ missed, tooLight }: BandMiss): string {
  const by = missed / lightnessOfOneValue;
  const much =
    by < 0.25
      ? 'a little'
      : by < 0.4
        ? 'a third of a value'
        : by < 0.6
          ? 'half a value'
          : by < 0.9
            ? 'most of a value'
            : by < 1.3
              ? 'a whole value'
              : `${by.toFixed(1)} values`;
  return `${much} too ${tooLight > 0 ? 'light' : 'dark'}`;
}

/** Why there are not more washes: the paper, or the number of steps, allows no more. */
function paperWhy(count: number, borne: number, paper: PaperChoice): string {
  return count >= borne
    ? `${washesInWords(count)}: paper like yours (${paperInWords(paper)}) bears no more, though not all values and colours are reached.`
    : `${washesInWords(count)}: more would make too many steps, though not all values and colours are reached.`;
}

/** Why there are not fewer washes: one fewer would miss a value, or the colours. */
function moreWhy(count: number, { worst }: WashesReach, bands: number, isValue: boolean): string {
  const fewer = `${washesInWords(count)}: with ${spellCount(count - 1)}`;
  return isValue && worst
    ? `${fewer} the ${bandWord(worst.band, bands)} shapes would come out ${missInWords(worst)}.`
    : `${fewer} the values are reached, but lighter and darker shapes would have to share their colour.`;
}

/** Reason sentence where she chose the number of washes. */
function askedWhy(count: number, asked: number, values: number, paper: PaperChoice): string {
  const borne = maxWashes(paper);
  const said = `${washesInWords(count)}, as you asked`;
  if (count < asked) {
    return count === values
      ? `${washesInWords(count)}, not the ${asked} you asked for: there are no more values to paint.`
      : `${washesInWords(count)}, not the ${asked} you asked for: more would make too many steps.`;
  }
  return count > borne
    ? `${said}. Paper like yours (${paperInWords(paper)}) bears ${borne}: it may roughen and the colours turn dull.`
    : `${said}.`;
}

/** Reason sentence where fewer washes than proposed save time. */
export const hurriedWhy = (count: number, proposed: number): string =>
  `${washesInWords(count)}, so that it fits your evening; ${spellCount(proposed)} would come nearer to the values.`;

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

/** A band may be right on the whole and many of its shapes wrong: 95 % of the area is to be within 5 L* (own). */
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

/** How many values every passage has to paint. */
function paintedValues(slots: readonly Slot[]): number[] {
  const painted = slots.filter(({ reserve, share }) => !reserve && share > 0);
  const passages = [...new Set(painted.map(({ passage }) => passage))];
  return passages.map(
    (name) => paintedBands(painted.filter(({ passage }) => passage === name)).length,
  );
}

/** Most wash steps that leave room for the darkest touches and the last lights, where she asks for them (own) ... */
const mostAsked = mostPaintingSteps - 2;
/** ... and where they are proposed: each waits to dry, and with what comes before and after they make `mostSteps`. */
const mostProposed = 4;

/** Most washes over each other that make no more wash steps than that, with passages of so many values. */
function roomFor(values: readonly number[], mostWashSteps: number): number {
  const stepsOf = (washes: number) =>
    values.reduce((sum, count) => sum + Math.min(washes, count), 0);
  let washes = mostWashes;
  while (washes > 1 && stepsOf(washes) > mostWashSteps) washes--;
  return washes;
}

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
  const values = paintedValues(slots);
  const most = Math.max(0, ...values);
  const borne = maxWashes(paper);
  if (asked !== undefined) {
    const wanted = wholeNumber(asked, 1, mostWashes, 'Washes over each other');
    const washes = Math.min(wanted, Math.max(1, most), roomFor(values, mostAsked));
    return { washes, why: askedWhy(washes, wanted, most, paper), isAsked: true };
  }
  const atMost = Math.min(borne, roomFor(values, mostProposed));
  if (most <= 2) return { washes: Math.max(1, most), why: fewValuesWhy(most), isAsked: false };
  const start = Math.min(Math.max(2, Math.ceil(most / 2)), atMost);
  const few = washesReach((await solve(start)).facts);
  const proposal = (washes: number, why: string): ProposedWashes => ({
    washes,
    why,
    isAsked: false,
  });
  if (isReached(few)) return proposal(start, enoughWhy(start));
  if (start + 1 > Math.min(atMost, most, proposedWashes))
    return proposal(start, paperWhy(start, borne, paper));
  const more = washesReach((await solve(start + 1)).facts);
  return isWorthIt(few, more)
    ? proposal(start + 1, moreWhy(start + 1, few, bandCount, isValueMissed(few)))
    : proposal(start, enoughWhy(start, false));
}
