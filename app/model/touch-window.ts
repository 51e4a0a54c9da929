import { minutesInWords } from './minutes-in-words.ts';
import type { Touch } from './touch.ts';

/** '12 min at most', '½ min at most', '1½ h at most'. */
function atMost(minutes: number): string {
  if (minutes >= 90) return `${Math.round(minutes / 30) / 2} h at most`;
  return `${minutes < 1 ? '½' : Math.round(minutes)} min at most`;
}

/** When a technique is done: the sign to look for, and the minutes after the stroke. */
export function touchWindow({ paper, minutes }: Pick<Touch, 'paper' | 'minutes'>): string {
  if (minutes === null) return `on ${paper} paper`;
  switch (paper) {
    case 'satin':
      return `as the shine goes, after ${minutesInWords(minutes)}`;
    case 'damp':
      return `once the shine has gone, ${minutesInWords(minutes)} after the stroke`;
    default:
      return `while it shines, ${atMost(minutes[1])}`;
  }
}
