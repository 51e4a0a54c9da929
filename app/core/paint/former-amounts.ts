import { strongestLoad } from '../limits.ts';
import { type Consistency, consistencyOf } from './consistency.ts';
import { type LaidMix, type Part, wholeParts } from './mix.ts';
import { type Paint, strengthOf } from './paint.ts';

/**
 * How a mix that she changed is counted: parts are volumes of tube paint and the load is ml/m2. Missing where she did
 * so before paints had a strength: then parts are shares of the load, and the load counts pale washes.
 */
export type AmountUnit = 'ml';

/** Amounts as she changed them, in the unit of their time. */
export interface ChangedAmounts extends LaidMix {
  readonly unit?: AmountUnit;
}

type StrongPaint = Pick<Paint, 'id' | 'strength'>;

/** Shares that sum to 1. */
function sharesOf(amounts: readonly number[]): number[] {
  const sum = amounts.reduce((all, one) => all + one, 0);
  return amounts.map((amount) => amount / sum);
}

/** How far two lists of shares lie apart. */
const apart = (one: readonly number[], other: readonly number[]): number =>
  Math.hypot(...one.map((share, i) => share - other[i]));

/**
 * Former amounts of a mix as volumes of tube paint: the whole parts whose colour comes nearest, at a load as strong as
 * before, as far as both can be laid. Left as it is where a paint is not among `paints`.
 */
function inVolumes({ parts, load }: LaidMix, paints: readonly StrongPaint[]): LaidMix {
  const strengths = parts.flatMap(({ paint }) => {
    const found = paints.find(({ id }) => id === paint);
    return found ? [strengthOf(found)] : [];
  });
  if (parts.length === 0 || strengths.length < parts.length) return { parts, load };
  const wanted = sharesOf(parts.map((part) => part.parts));
  const loadsOf = (volumes: readonly number[]): number[] =>
    volumes.map((volume, i) => volume * strengths[i]);
  const distance = (volumes: readonly number[]): number =>
    apart(sharesOf(loadsOf(volumes)), wanted);
  const volumes = wholeParts(parts.length).reduce((best, next) =>
    distance(next) < distance(best) ? next : best,
  );
  const loads = loadsOf(sharesOf(volumes)).reduce((all, one) => all + one, 0);
  return {
    parts: parts.map(({ paint }, i): Part => ({ paint, parts: volumes[i] })),
    load: Math.min(strongestLoad, load / loads),
  };
}

/**
 * Amounts as she changed them, for a plan that counts in `unit`; null where they were changed in a plan that counts
 * otherwise and can't be told in this one.
 */
export function amountsIn(
  unit: AmountUnit | undefined,
  { parts, load, unit: own }: ChangedAmounts,
  paints: readonly StrongPaint[],
): LaidMix | null {
  if (own === unit) return { parts, load };
  return unit === undefined ? null : inVolumes({ parts, load }, paints);
}

/** Where the words began while loads counted pale washes (own). */
const formerLimits = [
  [16, 'butter'],
  [6, 'cream'],
  [2, 'milk'],
  [0.7, 'coffee'],
] as const;

/** The word for a load, as it was called in its time. */
export const consistencyIn = (unit: AmountUnit | undefined, load: number): Consistency =>
  unit ? consistencyOf(load) : (formerLimits.find(([from]) => load >= from)?.[1] ?? 'tea');
