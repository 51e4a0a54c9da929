import type { Range } from './lab.ts';
import { minutesInWords } from './minutes-in-words.ts';
import type { Touch } from './touch.ts';

/**
 * When a technique is done: the sign to look for, and the minutes after the stroke. The shine may go at either end
 * of its clock, so both are said: the latest alone would promise too much.
 */
export function touchWindow(
  { paper, minutes }: Pick<Touch, 'paper' | 'minutes'>,
  shineMinutes: Range,
): string {
  if (minutes === null) return `on ${paper} paper`;
  switch (paper) {
    case 'satin':
      return `as the shine goes, after ${minutesInWords(minutes)}`;
    case 'damp':
      return `once the shine has gone, ${minutesInWords(minutes)} after the stroke`;
    default:
      return `while it shines; the shine goes in ${minutesInWords(shineMinutes)}`;
  }
}
