import { valueOfLightness } from '../../colour/munsell-value.ts';
import { combinations } from '../../numeric/combinations.ts';
import { isWhiteOrBlack, type Paint } from '../../paint/paint.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { largestMix, mixGroup } from '../library/mix-library.ts';
import { closeEnough } from '../search/branch-and-bound.ts';
import { againstPaints } from '../search/search-palette.ts';
import type { DarkRemedy } from './palette-offer.ts';

/** L* of the darkest mix of a paint with at most two of the others. */
function darkestWith(paint: Paint, others: readonly Paint[]): number {
  const paints = [...others, paint];
  const own = others.length;
  let darkest = 100;
  for (let size = 0; size < largestMix; size++) {
    for (const set of combinations(others.length, size)) {
      darkest = Math.min(darkest, mixGroup(paints, [...set, own]).darkest);
    }
  }
  return darkest;
}

/** Munsell values nobody sees (own figure). */
const unseen = 0.1;

/** Munsell values by which a darkest mix of L* `darkest` misses `wanted`; 0 where it is near enough. */
export function valuesShort(darkest: number, wanted: number): number {
  const short = valueOfLightness(darkest) - valueOfLightness(wanted);
  return darkest - wanted <= closeEnough || short < unseen ? 0 : short;
}

interface Candidate {
  readonly paint: Paint;
  readonly darkest: number;
  readonly short: number;
}

/**
 * The paint that closes the gap between the darkest these paints reach and what is wanted, L*: one of her box
 * if any does, else one of all that are known; of several that close it the one with least against it; where
 * none does the one that brings it nearest. Null where nothing helps. No whites, no blacks.
 */
export async function darkRemedy(
  paints: readonly Paint[],
  reached: number,
  wanted: number,
  known: readonly Paint[],
  box: readonly string[] | undefined,
  checkpoint: Checkpoint,
): Promise<DarkRemedy | null> {
  if (valuesShort(reached, wanted) === 0) return null;
  const others = known.filter((paint) => !paints.includes(paint) && !isWhiteOrBlack(paint.ci));
  const tried: Candidate[] = [];
  for (const [n, paint] of others.entries()) {
    await checkpoint(n / others.length);
    const darkest = darkestWith(paint, paints);
    if (darkest < reached) tried.push({ paint, darkest, short: valuesShort(darkest, wanted) });
  }
  const owned = ({ paint }: Candidate): boolean => box?.includes(paint.id) ?? true;
  const rank = (one: Candidate): readonly number[] => [
    one.short > 0 ? 1 : 0,
    owned(one) ? 0 : 1,
    one.short > 0 ? one.darkest : againstPaints([one.paint]),
  ];
  const [best] = tried.sort((one, two) => {
    const [x, y] = [rank(one), rank(two)];
    return x.map((each, i) => each - y[i]).find((gap) => gap !== 0) ?? 0;
  });
  if (!best) return null;
  const { id, name } = best.paint;
  return { id, name, owned: owned(best), valuesShort: best.short };
}
