import type { Range } from '../colour/lab.ts';
import type { DryingModel } from '../drying/estimate-drying.ts';
import { type DryingClockName, type Lesson, teaches } from '../drying/learn-pace.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import type { Weather } from '../drying/weather.ts';
import { minuteMs } from '../limits.ts';
import { waterKindOf } from '../plan/water-kind.ts';
import {
  type DryingClock,
  extendClock,
  modelProgressAt,
  reckonDrying,
  type TimedStep,
  unplannedClock,
} from './drying-clock.ts';
import type { Practising } from './session-event.ts';
import type { SessionState } from './session-state.ts';

/** The clock she speaks of: that of the step's own wash, else of what dries last. */
function clockOf(state: SessionState, key: string): DryingClock | null {
  return state.clocks.find((clock) => clock.key === key && clock.dryMs === null) ?? state.timer;
}

function replaced(state: SessionState, clock: DryingClock): SessionState {
  const others = state.clocks.filter((each) => each.key !== clock.key);
  return { ...state, clocks: [...others, clock] };
}

/**
 * What she saw on the sheet, noted on the clock it is about, and learned from; nothing wet, nothing
 * to note.
 */
export function noteOnClock(
  state: SessionState,
  steps: readonly TimedStep[],
  key: string,
  what: DryingClockName,
): SessionState {
  const clock = clockOf(state, key);
  const noted = what === 'shine' ? 'shineGoneMs' : 'dryMs';
  if (!clock || clock[noted] !== null) return state;
  const lessons = [...state.lessons, ...lessonOf(state, steps, clock, what)];
  return replaced({ ...state, lessons }, { ...clock, [noted]: state.atMs });
}

function lessonOf(
  { atMs, paper }: SessionState,
  steps: readonly TimedStep[],
  { key, course }: DryingClock,
  clock: DryingClockName,
): readonly Lesson[] {
  const step = steps.find((each) => each.key === key);
  const wash = step ? waterKindOf(step) : null;
  if (!course || wash === null) return [];
  const ratio = modelProgressAt(course, clock, atMs);
  return teaches(ratio)
    ? [{ kind: 'tap', clock, paper, wash, ratio, from: tapName(key, atMs) }]
    : [];
}

/** What was learned last from 'it is dry' about a wash that was not. */
function unlearned(lessons: readonly Lesson[], name: string): readonly Lesson[] {
  return lessons.filter(
    (lesson) => lesson.kind !== 'tap' || lesson.clock !== 'dry' || lesson.from !== name,
  );
}

/** Two lessons are the same if wash and time match; collisions between sessions are ignored. */
const tapName = (key: string, atMs: number): string => `${key} ${atMs}`;

/** Takes 'it is dry' back: as if it had not been said. */
export function takeBackDry(state: SessionState, key: string): SessionState {
  const clock = state.clocks.find((each) => each.key === key);
  if (!clock || clock.dryMs === null) return state;
  const lessons = unlearned(state.lessons, tapName(key, clock.dryMs));
  return replaced({ ...state, lessons }, { ...clock, dryMs: null });
}

/** Still wet: the wait is longer, also when the plan or she thought it dry. */
export function stillWet(state: SessionState, key: string): SessionState {
  const waiting = { ...state, phase: state.phase === 'ready' ? 'drying' : state.phase } as const;
  const clock = clockOf(state, key) ?? state.clocks.at(-1);
  if (!clock) return replaced(waiting, unplannedClock(key, state.atMs));
  const longer = extendClock(clock, clock.reckoned.dryMinutes[1], state.atMs);
  return replaced(takeBackDry(waiting, clock.key), longer);
}

interface Change {
  readonly weather?: Weather;
  readonly paper?: PaperChoice;
}

/**
 * Other air, another paper: what is still wet dries at the new rate from now on. What is left of
 * every wait is stretched or shortened; what has gone by counts as it went.
 */
export function changeCircumstances(
  state: SessionState,
  steps: readonly TimedStep[],
  change: Change,
  dryingModel: DryingModel,
): SessionState {
  const after = { ...state, ...change };
  const clocks = state.clocks.map((clock) => {
    const step = steps.find(({ key }) => key === clock.key);
    return step && clock.dryMs === null ? atNewRate(clock, step, state, after, dryingModel) : clock;
  });
  return { ...after, clocks };
}

function atNewRate(
  clock: DryingClock,
  step: TimedStep,
  before: SessionState,
  after: SessionState,
  dryingModel: DryingModel,
): DryingClock {
  const { atMs } = before;
  const was = reckonDrying(step, before, dryingModel);
  const is = reckonDrying(step, after, dryingModel);
  const { course } = clock;
  const shine = stretched([clock.shineLowMs, clock.shineHighMs], was.shineMinutes, is.shineMinutes);
  const dry = stretched([clock.endsLowMs, clock.endsHighMs], was.dryMinutes, is.dryMinutes);
  return {
    ...clock,
    shineLowMs: shine[0],
    shineHighMs: shine[1],
    endsLowMs: dry[0],
    endsHighMs: dry[1],
    course: course &&
      is.model && {
        sinceMs: atMs,
        shineGone: partGone(modelProgressAt(course, 'shine', atMs)),
        dryGone: partGone(modelProgressAt(course, 'dry', atMs)),
        model: is.model,
      },
  };

  function stretched([low, high]: Range, old: Range, updated: Range): Range {
    const end = (clockMs: number, i: 0 | 1): number =>
      clockMs <= atMs || old[i] <= 0 ? clockMs : atMs + ((clockMs - atMs) * updated[i]) / old[i];
    const newLow = end(low, 0);
    return [newLow, Math.max(newLow, end(high, 1))];
  }
}

const partGone = (part: number): number => (Number.isFinite(part) ? part : 0);

/** A scrap is tried for this long, ms. */
const practiceMs = 5 * minuteMs;

/** What is left of the time for a scrap, ms; of one not begun yet, all of it. */
export const practiceLeftMs = ({ practice, atMs }: Pick<SessionState, 'practice' | 'atMs'>) =>
  practice ? Math.max(0, practice.begunMs + practiceMs - atMs) : practiceMs;

/** A step tried on a scrap; the moment its shine has gone teaches the shine clock. */
export function practiseOnScrap(
  state: SessionState,
  steps: readonly TimedStep[],
  key: string,
  doing: Practising,
  dryingModel: DryingModel,
): SessionState {
  const { atMs, practice } = state;
  const step = steps.find((each) => each.key === key);
  if (!step) return state;
  if (doing === 'ended') return { ...state, practice: null };
  if (doing === 'begun' || practice?.key !== key)
    return { ...state, practice: { key, begunMs: atMs, downMs: null, shineGoneMs: null } };
  if (doing === 'brush-down')
    return { ...state, practice: { ...practice, downMs: atMs, shineGoneMs: null } };
  if (practice.downMs === null || practice.shineGoneMs !== null) return state;
  return {
    ...state,
    practice: { ...practice, shineGoneMs: atMs },
    lessons: [...state.lessons, ...learnFromScrap(state, step, practice.downMs, dryingModel)],
  };
}

function learnFromScrap(
  state: SessionState,
  step: TimedStep,
  downMs: number,
  dryingModel: DryingModel,
): SessionState['lessons'] {
  const wash = waterKindOf(step);
  const likely = reckonDrying(step, state, dryingModel).model?.shine ?? 0;
  const ratio = (state.atMs - downMs) / minuteMs / likely;
  if (wash === null || !teaches(ratio)) return [];
  const { paper } = state;
  return [{ kind: 'tap', clock: 'shine', paper, wash, ratio, from: `scrap ${step.key}` }];
}
