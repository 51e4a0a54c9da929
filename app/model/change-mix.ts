import type { Mix, Part } from './wash-plan.ts';

export interface MixAmounts {
  readonly parts: readonly Part[];
  readonly load: number;
}

/** Whole parts of one mix sum to at most this. */
export const mostParts = 8;
const loads = { least: 0.25, most: 32 } as const;

/** One part more or less of a paint; unchanged where none would be left, or too many. */
export function partsChanged(
  mix: Pick<Mix, 'parts' | 'load'>,
  paint: string,
  by: 1 | -1,
): MixAmounts {
  const { load } = mix;
  const parts = mix.parts
    .map((part) => (part.paint === paint ? { ...part, parts: part.parts + by } : part))
    .filter((part) => part.parts > 0);
  const sum = parts.reduce((all, part) => all + part.parts, 0);
  return sum < 1 || sum > mostParts ? { parts: mix.parts, load } : { parts, load };
}

/** Half an octave stronger or weaker, as the loads of the plan go. */
export function loadChanged({ parts, load }: Pick<Mix, 'parts' | 'load'>, by: 1 | -1): MixAmounts {
  const next = load * 2 ** (by / 2);
  return { parts, load: Math.min(loads.most, Math.max(loads.least, next)) };
}
