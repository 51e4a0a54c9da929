import type { PlanEdit } from '../../decisions/plan-edit.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Step, StepKind } from '../plan.ts';
import { leavesWet } from '../plan.ts';
import { dryKeyOf } from '../steps/step-draft.ts';
import { isPaintingStep, mostInEvening, mostPaintingSteps, mostSteps } from './evening-times.ts';

/** Finishing steps that may be left out, least useful first. Last lights stay: they restore whites painted over. */
const spared: readonly StepKind[] = ['splatter', 'lift', 'details', 'accents'];

/** Left out of a long plan: they please, and nobody misses them. */
const showy: readonly StepKind[] = ['splatter', 'lift'];

/** Finishing steps left out so that a plan does not grow too long. */
interface LimitedSteps {
  readonly edits: readonly PlanEdit[];
  /** What is left out and why, a sentence; undefined where nothing is. */
  readonly why: Said | undefined;
}

const sparedOf = (steps: readonly Step[]): Step[] =>
  spared.flatMap((kind) => steps.filter((step) => step.kind === kind));

const leftOut = (steps: readonly Step[]): PlanEdit[] =>
  steps.map(({ key }) => ({ kind: 'skip', key, skipped: true }));

/** Leaves all steps of these kinds out where time is short; the caller says so among its other concessions. */
export const withoutKinds = (steps: readonly Step[], kinds: readonly StepKind[]): PlanEdit[] =>
  leftOut(steps.filter(({ kind }) => kinds.includes(kind)));

/**
 * At most twelve painting steps and, by leaving out what is only showy, fourteen steps in all. `steps` are the plan's
 * before her own changes: steps she adds are never left out.
 */
export function limitSteps(steps: readonly Step[]): LimitedSteps {
  const tooMany = steps.filter(isPaintingStep).length - mostPaintingSteps;
  const out = sparedOf(steps).slice(0, Math.max(0, tooMany));
  const keys = new Set(steps.map(({ key }) => key));
  // A step goes with the drying check that waits for it.
  const lengthOf = (step: Step): number => (keys.has(dryKeyOf(step.key)) ? 2 : 1);
  let length = steps.length - out.reduce((sum, step) => sum + lengthOf(step), 0);
  for (const step of sparedOf(steps)) {
    if (length <= mostSteps || out.includes(step) || !showy.includes(step.kind)) continue;
    out.push(step);
    length -= lengthOf(step);
  }
  return {
    edits: leftOut(out),
    why:
      out.length === 0
        ? undefined
        : { say: 'evening/left-out', titles: out.map(({ title }) => title) },
  };
}

type Steps = readonly Step[];

const paintingIn = (steps: Steps, from: number, to: number): number =>
  steps.slice(from, to).filter(isPaintingStep).length;

/** A place before step `index` where the sheet is bone dry, and whether a passage is finished there. */
interface Place {
  readonly index: number;
  readonly betweenPassages: boolean;
}

const passageOf = (step: Step | undefined): string | undefined => step?.key.split('/')[1];

/** Where an evening may end: the sheet bone dry. Which of them are worth it `bestCuts` finds. */
function placesOf(steps: Steps): Place[] {
  const places: Place[] = [];
  let wet = false;
  for (const [index, step] of steps.entries()) {
    if (!wet && step.kind !== 'dry') {
      const before = steps.slice(0, index).findLast(({ kind }) => kind === 'wash');
      const after = steps.slice(index).find(isPaintingStep);
      const isNext = after?.kind === 'wash' && passageOf(before) !== passageOf(after);
      places.push({ index, betweenPassages: isNext });
    }
    wet = step.kind === 'dry' ? false : wet || leavesWet(step);
  }
  return places;
}

/** Too many steps weigh most, then the number of evenings, then where they end, then evenness (own). */
const cost = { stepTooMany: 1000, evening: 100, amidPassage: 10, unevenness: 0.1 } as const;

function costOf(painting: number): number {
  const tooMany = Math.max(0, painting - mostInEvening);
  return cost.evening + cost.stepTooMany * tooMany + cost.unevenness * painting ** 2;
}

/** The ends of all evenings but the last that cost least, as indices of the steps that begin the next. */
function bestCuts(steps: Steps, places: readonly Place[], from: number): [number, number[]] {
  let best: [number, number[]] = [costOf(paintingIn(steps, from, steps.length)), []];
  for (const [n, { index, betweenPassages }] of places.entries()) {
    const painting = paintingIn(steps, from, index);
    if (painting === 0) continue;
    const own = costOf(painting) + (betweenPassages ? 0 : cost.amidPassage);
    if (own >= best[0]) continue;
    const [rest, cuts] = bestCuts(steps, places.slice(n + 1), index);
    if (own + rest < best[0]) best = [own + rest, [index, ...cuts]];
  }
  return best;
}

const isMasked = (steps: Steps): boolean =>
  steps.some(({ kind }) => kind === 'mask') && !steps.some(({ kind }) => kind === 'unmask');

/**
 * Steps in evenings of at most seven painting steps, ended only where the sheet is bone dry, between passages if
 * that may be. The very steps where one evening holds them all. A break of the evening is said in the notes of
 * the steps beside it.
 */
export function cutEvenings(steps: Steps): Steps {
  if (steps.filter(isPaintingStep).length <= mostInEvening) return steps;
  const [, cuts] = bestCuts(steps, placesOf(steps), 0);
  if (cuts.length === 0) return steps;
  return steps.map((step, i) => {
    const evening = 1 + cuts.filter((cut) => cut <= i).length;
    const begins = cuts.includes(i) ? [{ say: 'evening/goes-on', evening } as const] : [];
    const ends = cuts.includes(i + 1)
      ? [{ say: 'evening/ends', evening, masked: isMasked(steps.slice(0, i + 1)) } as const]
      : [];
    const notes = [...begins, ...ends, ...(step.notes ?? [])];
    return { ...step, evening, ...(notes.length > 0 && { notes }) };
  });
}
