import type { Moment } from './session-event.ts';

/**
 * Time gone by between two moments, ms, never negative. A wall clock that jumped forward counts as
 * sleep (the monotonic clock stops then); one set back does not count. Across lives of the page
 * only the wall clock is left. Source: W3C High Resolution Time (the clock may stop in sleep).
 */
export function elapsedMs(from: Moment, to: Moment): number {
  const wall = to.wallMs - from.wallMs;
  const mono = from.bootId === to.bootId ? to.monoMs - from.monoMs : 0;
  return Math.max(0, Number.isFinite(wall) ? wall : 0, Number.isFinite(mono) ? mono : 0);
}

/** Smaller differences are the clocks' own wander. */
const wanderMs = 2000;

/**
 * By how much the wall clock was set back between two moments of one life of the page: negative ms,
 * or 0. Worth a 'clock-moved' event, so that a later reload still knows where time stood.
 */
export function clockSetBackMs(from: Moment, to: Moment): number {
  if (from.bootId !== to.bootId) return 0;
  const drift = to.wallMs - from.wallMs - (to.monoMs - from.monoMs);
  return drift < -wanderMs ? drift : 0;
}
