import { fewestEveningMinutes, mostEveningMinutes } from '../limits.ts';

/** Zeros of the Arabic and the Persian digits: both sets stand in order, ten to a row of sixteen. */
const easternDigits = /[\u0660-\u0669\u06f0-\u06f9]/g;
/** Thousands set apart by a space or an apostrophe, as many languages write them. */
const grouped = /^(-?\d{1,3})((?:[ \u00a0\u2009\u202f'’]\d{3})+)(?=$|[.,])/;

/**
 * The number a person typed, or null where it is none. Comma and point both mean the decimal sign,
 * whatever the language of the device; a point or comma between thousands is therefore refused
 * rather than guessed at.
 */
export function typedNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(easternDigits, (digit) => String(digit.charCodeAt(0) & 15))
    .replace(/^\u2212/, '-')
    .replace('\u066b', '.')
    .replace(grouped, (_, first: string, rest: string) => first + rest.replace(/\D/g, ''));
  if (!/^-?(?:\d+[.,]?\d*|[.,]\d+)$/.test(plain)) return null;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** Minutes she typed, or the sentence that says what is wrong with them. */
export function typedMinutes(text: string): number | string {
  const typed = typedNumber(text);
  if (typed === null) return "The time can't be read: write minutes, like 90.";
  const minutes = Math.round(typed);
  if (minutes < fewestEveningMinutes)
    return `Less than ${fewestEveningMinutes} minutes is no time for a wash: write ${fewestEveningMinutes} or more.`;
  return minutes > mostEveningMinutes
    ? `A day has ${mostEveningMinutes} minutes: write no more.`
    : minutes;
}
