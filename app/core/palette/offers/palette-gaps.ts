import { valueOfLightness } from '../../colour/lightness.ts';
import { mostPaintsInMix } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import { isWhiteOrBlack, type Paint } from '../../paint/paint.ts';
import type { Family } from '../../reading/reading.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { GroupMixer } from '../library/group-mixer.ts';
import type { CostTables } from '../search/cost-tables.ts';
import { againstPaints } from '../search/paint-price.ts';
import { darkestBandLightness, type PaletteTarget } from '../search/palette-targets.ts';
import { type JudgedSet, scoreSet } from '../search/score-set.ts';
import { closeEnough } from '../search/set-walk.ts';
import type { DarkRemedy, PaintLoss } from './palette-offer.ts';

/** What each paint of a set is good for: the set with it against the set without it. Null for an only paint. */
export function paintLosses(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  members: readonly number[],
  families: readonly Family[],
): (PaintLoss | null)[] {
  const wanted = darkestBandLightness(targets);
  const whole = scoreSet(tables, targets, members);
  return members.map((out) => {
    if (members.length === 1) return null;
    const rest = scoreSet(
      tables,
      targets,
      members.filter((member) => member !== out),
    );
    return lossOf(whole, rest, wanted, targets, families);
  });
}

function lossOf(
  whole: JudgedSet,
  rest: JudgedSet,
  wanted: number,
  targets: readonly PaletteTarget[],
  families: readonly Family[],
): PaintLoss {
  const lost = targets.map((_, t) => rest.costs[t] - whole.costs[t]);
  // A mix darker than the picture needs is no gain.
  const value = ({ darkest }: JudgedSet): number => valueOfLightness(Math.max(darkest, wanted));
  const mean = (
    among: (target: PaletteTarget) => boolean,
  ): readonly [share: number, off: number] => {
    let share = 0;
    let off = 0;
    for (const [t, target] of targets.entries()) {
      if (!among(target)) continue;
      share += target.weight;
      off += target.weight * lost[t];
    }
    return [share, share > 0 ? off / share : 0];
  };
  return {
    darksLighter: value(rest) - value(whole),
    furtherOff: mean(() => true)[1],
    families: families.flatMap(({ id, name }) => {
      const [share, furtherOff] = mean(({ family }) => family === id);
      return share > 0 ? [{ name, share, furtherOff }] : [];
    }),
  };
}

/** L* of the darkest mix of a paint with at most two of the others. */
function darkestWith(paint: Paint, others: readonly Paint[]): number {
  const mixer = new GroupMixer([...others, paint]);
  const own = others.length;
  let darkest = 100;
  for (let size = 0; size < mostPaintsInMix; size++) {
    for (const set of combinations(others.length, size)) {
      darkest = Math.min(darkest, mixer.darkest([...set, own]));
    }
  }
  return darkest;
}

/** Smallest shortfall worth mentioning, Munsell values (own). */
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
 * if any does, else, tried only then, one of all that are known; of several that close it the one with least against it; where
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
  const isHers = ({ id }: Paint): boolean => box?.includes(id) ?? true;
  const tried: Candidate[] = [];
  const tryAll = async (some: readonly Paint[]): Promise<void> => {
    for (const [n, paint] of some.entries()) {
      await checkpoint(n / some.length);
      const darkest = darkestWith(paint, paints);
      if (darkest < reached) tried.push({ paint, darkest, short: valuesShort(darkest, wanted) });
    }
  };
  await tryAll(others.filter(isHers));
  if (!tried.some(({ short }) => short === 0)) {
    await tryAll(others.filter((paint) => !isHers(paint)));
  }
  const owned = ({ paint }: Candidate): boolean => isHers(paint);
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
