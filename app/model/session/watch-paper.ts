import { type DryingClockName, type Lesson, teaches } from '../drying/learn-pace.ts';
import { waterKindOf } from '../water-kind.ts';
import { courseAt } from './course-at.ts';
import { type DryingClock, extendClock, type TimedStep, unplannedClock } from './drying-clock.ts';
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
export function seen(
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
  const ratio = courseAt(course, clock, atMs);
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

/** The log of another session hardly holds the same wash dry at the same millisecond. */
const tapName = (key: string, atMs: number): string => `${key} ${atMs}`;

/** Takes 'it is dry' back: as if it had not been said. */
export function notDry(state: SessionState, key: string): SessionState {
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
  return replaced(notDry(waiting, clock.key), longer);
}
