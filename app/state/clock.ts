import type { Moment } from '../model/session/session-event.ts';

/** Both clocks of the device, handed in so that tests can move them. */
export interface Clock {
  now(): Moment;
}

export function createClock(): Clock {
  const bootId = crypto.randomUUID();
  return { now: () => ({ wallMs: Date.now(), monoMs: performance.now(), bootId }) };
}
