import type { PaintLoss } from '../../../app/model/lost-without.ts';
import { valueOfLightness } from '../../../app/model/munsell-value.ts';
import type { Family } from '../../../app/model/reading.ts';
import type { CostTables } from './cost-tables.ts';
import { type JudgedSet, judgeSet } from './judge-set.ts';
import { darkestBandLightness, type PaletteTarget } from './palette-target.ts';

/** What each paint of a set is good for: the set with it against the set without it. Null for an only paint. */
export function paintLosses(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  members: readonly number[],
  families: readonly Family[],
): (PaintLoss | null)[] {
  const wanted = darkestBandLightness(targets);
  const whole = judgeSet(tables, targets, members);
  return members.map((out) => {
    if (members.length === 1) return null;
    const rest = judgeSet(
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
  const lost = targets.map((_, t) => (rest.costs[t] as number) - (whole.costs[t] as number));
  // Darker than the picture wants it is no gain.
  const value = ({ darkest }: JudgedSet): number => valueOfLightness(Math.max(darkest, wanted));
  const mean = (
    among: (target: PaletteTarget) => boolean,
  ): readonly [share: number, off: number] => {
    let share = 0;
    let off = 0;
    for (const [t, target] of targets.entries()) {
      if (!among(target)) continue;
      share += target.weight;
      off += target.weight * (lost[t] as number);
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
