import type { Range } from '../colour/lab.ts';

const half = (minutes: number): string => (minutes < 1 ? '½' : String(Math.round(minutes)));

/** A dash that no line breaks at: a word joiner (U+2060) follows it. */
const dash = '–\u2060';

/** '20–35 min', '1½–3 h', 'a minute': always a range, never a bare figure pretending to be exact. */
export function minutesInWords([low, high]: Range): string {
  if (high <= 0) return 'no time';
  if (high <= 1) return 'up to a minute';
  if (low >= 90) {
    const hours = (minutes: number): string => (Math.round(minutes / 30) / 2).toString();
    return `${hours(low)}${dash}${hours(high)} h`;
  }
  return `${half(low)}${dash}${half(high)} min`;
}

/** '45 min', '1 h 40 min', '3 h': to the five minutes, as no one reckons painting closer. */
export function hoursInWords(minutes: number): string {
  const rounded = minutes < 20 ? Math.max(1, Math.round(minutes)) : Math.round(minutes / 5) * 5;
  const hours = Math.floor(rounded / 60);
  const rest = rounded % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** '1 h 10 min to 2 h'. */
export const rangeInWords = ([low, high]: Range): string =>
  `${hoursInWords(low)} to ${hoursInWords(high)}`;

/** 'under 1 min', '12 min': to the minute, for it was measured. */
export const measuredMinutes = (minutes: number): string =>
  minutes < 1 ? 'under 1 min' : `${Math.round(minutes)} min`;

/** '12 min', '4 h 20 min', likewise. */
export function measuredHours(minutes: number): string {
  const whole = Math.round(minutes);
  return whole < 60 ? measuredMinutes(minutes) : `${Math.floor(whole / 60)} h ${whole % 60} min`;
}
