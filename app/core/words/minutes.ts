import type { Range } from '../colour/lab.ts';

const half = (minutes: number): string => (minutes < 1 ? '½' : String(Math.round(minutes)));

/** '20–35 min', '1½–3 h', 'a minute': always a range, never a bare figure pretending to be exact. */
export function minutesInWords([low, high]: Range): string {
  if (high <= 0) return 'no time';
  if (high <= 1) return 'up to a minute';
  if (low >= 90) {
    const hours = (minutes: number): string => (Math.round(minutes / 30) / 2).toString();
    return `${hours(low)}–${hours(high)} h`;
  }
  return `${half(low)}–${half(high)} min`;
}
