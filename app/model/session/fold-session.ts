import type { Lesson } from '../drying/learn-pace.ts';
import { applyEvent } from './apply-event.ts';
import type { TimedStep } from './drying-clock.ts';
import type { SessionEvent } from './session-event.ts';
import { freshState, type SessionState } from './session-state.ts';
import { standingEvents } from './taken-back.ts';

/** The log in order, each number once, without what she took back: written twice counts once. */
export function inOrder(events: readonly SessionEvent[]): SessionEvent[] {
  const sorted = [...events].sort((a, b) => a.seq - b.seq);
  return [...standingEvents(sorted.filter((event, i) => event.seq !== sorted[i - 1]?.seq))];
}

/**
 * Where a session stands, from the plan's steps and the events of one session. `lessons` is what
 * earlier sessions taught the drying clocks. Never throws.
 */
export function foldSession(
  steps: readonly TimedStep[],
  events: readonly SessionEvent[],
  lessons: readonly Lesson[] = [],
): SessionState {
  const fresh: SessionState = { ...freshState, lessons };
  return inOrder(events).reduce((state, event) => applyEvent(state, steps, event), fresh);
}
