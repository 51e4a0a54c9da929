import { valueOfLightness } from '../../colour/munsell-value.ts';
import type { Family } from '../../reading/reading.ts';
import {
  type CostTables,
  darkestBandLightness,
  type PaletteTarget,
} from '../search/cost-tables.ts';
import { type JudgedSet, scoreSet } from '../search/score-set.ts';

/** What a palette does worse without one of its paints. */
interface PaintLoss {
  /** Munsell values by which the darks end lighter. */
  readonly darksLighter: number;
  /** Mean CIEDE2000 of the painted area that is lost, surcharges for mixed paints included. */
  readonly furtherOff: number;
  readonly families: readonly FamilyLoss[];
}

interface FamilyLoss {
  /** In painter's words: 'dull green'. */
  readonly name: string;
  /** Of the painted area, 0..1. */
  readonly share: number;
  /** Mean CIEDE2000 lost within the family. */
  readonly furtherOff: number;
}

/** Own figures: a third of a value shows; a family shifts, shifts clearly, is another colour; too small to matter. */
const leastDark = 0.3;
const shifts = 2;
const clearly = 6;
const otherColour = 12;
const leastShare = 0.03;
const leastOverall = 0.4;

function familyWords(families: readonly FamilyLoss[]): string | null {
  const worst = families
    .filter(({ share, furtherOff }) => furtherOff >= shifts && share >= leastShare)
    .sort((one, two) => two.share * two.furtherOff - one.share * one.furtherOff)
    .slice(0, 2);
  const most = worst.reduce((all, { furtherOff }) => Math.max(all, furtherOff), 0);
  if (worst.length === 0) return null;
  const one = worst.length === 1;
  const who = worst.map(({ name }) => `the ${name}`).join(' and ');
  if (most >= otherColour) return `${who} can't be mixed any more`;
  return `${who} ${one ? 'shifts' : 'shift'}${most >= clearly ? ' clearly' : ''}`;
}

/**
 * What is lost without a paint, in words to follow 'Without it': 'the darks end 1.4 values lighter; the dull
 * green shifts'. Null: it is the only paint.
 */
export function describeLoss(loss: PaintLoss | null): string {
  if (!loss) return 'nothing is left to paint with';
  const dark =
    loss.darksLighter >= leastDark
      ? `the darks end ${loss.darksLighter.toFixed(1)} values lighter`
      : null;
  const said = [dark, familyWords(loss.families)].filter((words) => words !== null);
  if (said.length > 0) return said.join('; ');
  if (loss.furtherOff >= leastOverall) return 'all colours come a little less close';
  return 'little changes: the others nearly do its work';
}

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
