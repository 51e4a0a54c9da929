import { type KeptAir, usualAir } from '../drying/conditions.ts';
import { largestPalette, proposedPaletteSize } from '../limits.ts';
import { type OwnBox, ownPaints, tickedPaints } from '../paint/own-box.ts';
import { strengthCorrections } from '../paint/strength-corrections.ts';
import type { ReadingWishes } from '../reading/reading.ts';
import { strokeInCut } from '../reference/photo-stroke.ts';
import type { Reference } from '../reference/reference.ts';
import type { Decision } from './painting.ts';
import type { PlanWishes } from './plan-wishes.ts';
import {
  type DecisionKind,
  lastDecision,
  sinceDropped,
  standingDecisions,
  standingPlanEdits,
} from './standing-decisions.ts';
import { subjectStrokes } from './subject-strokes.ts';

/** What the search for a palette may choose from. */
export type BoxWishes = Pick<PlanWishes, 'box' | 'ownPaints' | 'strengths'>;

export function boxWishes(box: OwnBox): BoxWishes {
  const own = ownPaints(box);
  const ticked = tickedPaints(box);
  const strengths = strengthCorrections(box.strengthLessons);
  return {
    ...(ticked && { box: ticked }),
    ...(own.length > 0 && { ownPaints: own }),
    ...(strengths.length > 0 && { strengths }),
  };
}

export interface PaletteWish {
  /** At most this many paints. */
  readonly n: number;
  readonly must: readonly string[];
  readonly exclude: readonly string[];
  readonly chosen?: readonly string[];
}

const usualPalette: PaletteWish = { n: proposedPaletteSize, must: [], exclude: [] };

type Cut = Pick<Reference, 'crop' | 'sheet'>;

/** A list under its name, or nothing where it is empty. */
const unlessEmpty = <N extends keyof ReadingWishes, T>(name: N, list: readonly T[]) =>
  list.length > 0 ? { [name]: list } : {};

/** What she decided about the reading of that reference; the rest is proposed. */
export function readingWishes(decisions: readonly Decision[], cut: Cut): ReadingWishes {
  const values = lastDecision(decisions, 'bands', 'limits');
  const range = lastDecision(decisions, 'range');
  const smallest = lastDecision(decisions, 'smallest')?.sizes;
  const whites = standingDecisions(decisions, 'white').map(({ mode, ...stroke }) => ({
    mode,
    ...strokeInCut(cut, stroke),
  }));
  const alterations = standingDecisions(decisions, 'alter').map(({ change, ...stroke }) => ({
    change,
    ...strokeInCut(cut, stroke),
  }));
  return {
    ...(values?.kind === 'bands' && { bands: values.count }),
    ...(values?.kind === 'limits' && { limits: values.lightness }),
    ...(range && { range: range.mode }),
    ...unlessEmpty('subject', subjectStrokes(decisions, cut)),
    ...unlessEmpty('whites', whites),
    ...unlessEmpty(
      'familyEdits',
      sinceDropped(standingDecisions(decisions, 'families').map(({ edit }) => edit)),
    ),
    ...(smallest && { smallest }),
    ...unlessEmpty('alterations', alterations),
    ...(lastDecision(decisions, 'ground')?.plain && { plainGround: true }),
  };
}

export const paletteWish = (decisions: readonly Decision[]): PaletteWish =>
  lastDecision(decisions, 'palette') ?? usualPalette;

/** What she decided about paints and plan, the box she chooses from, her air and her paper. */
export function planWishes(
  decisions: readonly Decision[],
  box: OwnBox,
  { weather, paper }: Pick<KeptAir, 'weather' | 'paper'> = usualAir,
): PlanWishes {
  const { n, must, exclude, chosen } = paletteWish(decisions);
  const colours = lastDecision(decisions, 'colours')?.wish;
  const evening = lastDecision(decisions, 'evening')?.minutes;
  const washes = lastDecision(decisions, 'washes')?.count;
  const passages = lastDecision(decisions, 'passages')?.order;
  const edits = standingPlanEdits(decisions);
  // A paint of hers may have been taken out of the box since.
  const there = (ids: readonly string[]) => ids.filter((id) => !box.gone.includes(id));
  return {
    ...boxWishes(box),
    paletteSize: n,
    must: there(must),
    exclude: there(exclude),
    ...(chosen && { chosen: there(chosen) }),
    ...(colours && colours.mode !== 'photo' && { colours }),
    weather,
    paper,
    ...(evening && { evening }),
    ...(washes && { washes }),
    ...(passages && { passages }),
    ...(edits.length > 0 && { edits }),
  };
}

/** Decisions over the reading that only the plan follows: ways of whites, edges. */
export const planDecisionKinds: readonly DecisionKind[] = ['white-way', 'edge'];

const without = (list: readonly string[], id: string): string[] =>
  list.filter((other) => other !== id);
const including = (list: readonly string[], id: string): string[] => [...without(list, id), id];

/** Searched among all that is allowed. */
export const searchedFreely = ({ n, must, exclude }: PaletteWish): PaletteWish => ({
  n,
  must,
  exclude,
});

/** Exactly these paints. */
export const chooseExactly = (wish: PaletteWish, ids: readonly string[]): PaletteWish => ({
  ...searchedFreely(wish),
  chosen: ids,
});

/** At most so many paints, searched anew. */
export const resizePalette = (wish: PaletteWish, n: number): PaletteWish => ({
  ...searchedFreely(wish),
  n: Math.min(largestPalette, Math.max(1, wish.must.length, n)),
});

/** Whether one paint more can be asked for. */
export const hasRoom = ({ n, must, chosen }: PaletteWish): boolean =>
  chosen ? chosen.length < largestPalette : must.length < n;

/** With a paint that has to be in it: added to those chosen, or asked of the search. */
export function withWishedPaint(wish: PaletteWish, id: string): PaletteWish {
  const exclude = without(wish.exclude, id);
  if (wish.chosen) return { ...wish, exclude, chosen: including(wish.chosen, id) };
  return { ...wish, exclude, must: including(wish.must, id) };
}

/** Without a paint: taken from those chosen, or never to be searched for. */
export function withoutPaint(wish: PaletteWish, id: string): PaletteWish {
  if (wish.chosen) {
    const left = without(wish.chosen, id);
    return left.length > 0
      ? { ...wish, chosen: left, must: without(wish.must, id) }
      : withoutPaint(searchedFreely(wish), id);
  }
  return { ...wish, must: without(wish.must, id), exclude: including(wish.exclude, id) };
}

/** The search may use it again, or need not any more. */
export const releasePaint = (wish: PaletteWish, id: string): PaletteWish => ({
  ...wish,
  must: without(wish.must, id),
  exclude: without(wish.exclude, id),
});
