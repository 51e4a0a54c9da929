import { hoursInWords } from '../../words/minutes.ts';
import { capitalize, spellOrdinal } from '../../words/numbers.ts';
import type { EveningTime } from './evening-times.ts';

/** 'about 1 h 40 min, 55 min of it waiting'. */
function timeInWords({ likely, likelyWait }: EveningTime): string {
  const waiting = likelyWait > 0 ? `, ${hoursInWords(likelyWait)} of it waiting` : '';
  return `about ${hoursInWords(likely)}${waiting}`;
}

/** 'Second evening'. */
export const eveningName = (evening: number): string =>
  evening <= 4 ? `${capitalize(spellOrdinal(evening))} evening` : `Evening ${evening}`;

/** Time of a plan, every evening of it: 'First evening about 2 h, of it 1 h waiting. Second evening …'. */
export function planTimeInWords(times: readonly EveningTime[]): string {
  const [only] = times;
  if (!only) return '';
  if (times.length === 1) return `${capitalize(timeInWords(only))}.`;
  return times.map((time) => `${eveningName(time.evening)} ${timeInWords(time)}.`).join(' ');
}

/** Where nothing fits the time she has: how long the plan takes with all given up that can be. */
export function stillTakesInWords(times: readonly EveningTime[]): string {
  const longest = Math.max(...times.map(({ likely }) => likely));
  const what = times.length > 1 ? 'the longest evening' : 'it';
  return `Cut down as far as it goes, ${what} still takes about ${hoursInWords(longest)}.`;
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
