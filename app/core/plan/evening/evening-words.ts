import type { Range } from '../../colour/lab.ts';
import type { EveningTime } from './evening-times.ts';

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

/** 'about 1 h 40 min, of it 55 min waiting'. */
function timeInWords({ likely, likelyWait }: EveningTime): string {
  const waiting = likelyWait > 0 ? `, of it ${hoursInWords(likelyWait)} waiting` : '';
  return `about ${hoursInWords(likely)}${waiting}`;
}

const names = ['First', 'Second', 'Third', 'Fourth'];

/** 'Second evening'. */
export const eveningName = (evening: number): string =>
  evening <= names.length ? `${names[evening - 1]} evening` : `Evening ${evening}`;

/** Time of a plan, every evening of it: 'First evening about 2 h, of it 1 h waiting. Second evening …'. */
export function planTimeInWords(times: readonly EveningTime[]): string {
  const [only] = times;
  if (!only) return '';
  if (times.length === 1) return `${timeInWords(only).replace(/^a/, 'A')}.`;
  return times.map((time) => `${eveningName(time.evening)} ${timeInWords(time)}.`).join(' ');
}

/** What a step before a break says of the sheet until the next evening. */
export function meanwhileInWords(evening: number, masked: boolean): string {
  const mask = masked
    ? ' Masking fluid lies on it: go on within the days its label allows, else it tears the paper.'
    : '';
  return `The ${eveningName(evening).toLowerCase()} ends here. Leave the sheet on its board to dry, flat and out of the sun.${mask}`;
}

/** What the first step of a later evening says. */
export const goOnInWords = (evening: number): string =>
  `${eveningName(evening)}: the sheet must be bone dry and flat. Wet your puddles again, or mix them afresh, and try them on the scrap.`;
