import { mostPaintsInMix, mostParts, mostToOne, strongestLoad } from '../limits.ts';
import type { Part } from '../paint/mix.ts';
import type { Mix } from './plan.ts';

export interface MixAmounts {
  readonly parts: readonly Part[];
  readonly load: number;
}

/** Paler than this nobody mixes a wash, ml of tube paint on a square metre (own). */
const palest = 0.15;

const sumOf = (parts: readonly Part[]): number => parts.reduce((all, part) => all + part.parts, 0);

/** Whether another paint may be added: a mix holds at most three paints in at most eight parts, six to one. */
export const takesAnother = ({ parts }: Pick<Mix, 'parts'>): boolean =>
  parts.length < mostPaintsInMix &&
  sumOf(parts) < mostParts &&
  parts.every((part) => part.parts <= mostToOne);

/**
 * One part more or less of a paint, or the first of one that was not in it; unchanged where none would be left, too
 * many, or more of one to another than can be squeezed out.
 */
export function changeParts(
  mix: Pick<Mix, 'parts' | 'load'>,
  paint: string,
  by: 1 | -1,
): MixAmounts {
  const { load } = mix;
  const isIn = mix.parts.some((part) => part.paint === paint);
  if (!isIn && !(by > 0 && takesAnother(mix))) return { parts: mix.parts, load };
  const before = isIn ? mix.parts : [...mix.parts, { paint, parts: 0 }];
  const parts = before
    .map((part) => (part.paint === paint ? { ...part, parts: part.parts + by } : part))
    .filter((part) => part.parts > 0);
  const counts = parts.map((part) => part.parts);
  const canBeSqueezed = Math.max(...counts) <= mostToOne * Math.min(...counts);
  const sum = sumOf(parts);
  const isMix = sum >= 1 && sum <= mostParts && (canBeSqueezed || by < 0);
  return isMix ? { parts, load } : { parts: mix.parts, load };
}

/** Half an octave stronger or weaker, as the loads of the plan go. */
export function changeLoad({ parts, load }: Pick<Mix, 'parts' | 'load'>, by: 1 | -1): MixAmounts {
  const next = load * 2 ** (by / 2);
  return { parts, load: Math.min(strongestLoad, Math.max(palest, next)) };
}
