import { typedNumber } from './typed-number.ts';

/** Minutes an evening may have. */
const least = 20;
const most = 1440;

/** Minutes she typed, or the sentence that says what is wrong with them. */
export function typedMinutes(text: string): number | string {
  const typed = typedNumber(text);
  if (typed === null) return "The time can't be read: write minutes, like 90.";
  const minutes = Math.round(typed);
  if (minutes < least)
    return `Less than ${least} minutes is no time for a wash: write ${least} or more.`;
  return minutes > most ? `A day has ${most} minutes: write no more.` : minutes;
}
