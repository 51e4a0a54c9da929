import type { DryingClockName } from '../drying/learn-pace.ts';
import type { Course } from './drying-clock.ts';

const minuteMs = 60_000;

/** Parts of the model's own course gone by at a time of the session: 1 is the time held for likely. */
export function courseAt(course: Course, clock: DryingClockName, atMs: number): number {
  const minutes = (atMs - course.sinceMs) / minuteMs;
  const before = clock === 'shine' ? course.shineGone : course.dryGone;
  const model = course.model[clock];
  return model > 0 ? before + minutes / model : Number.NaN; // nothing to go by: teaches nothing
}
