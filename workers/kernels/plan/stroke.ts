import { bestLoad } from './best-load.ts';
import type { FamilyWork } from './family-work.ts';
import type { Ground } from './ground.ts';
import { look, lookAtPuddle } from './look-at-puddle.ts';
import type { PuddleOption } from './puddle-option.ts';
import { perMixedPaint, stiffness } from './wash-cost.ts';

/** One family's share in one wash. */
export interface Stroke {
  readonly option: PuddleOption;
  readonly load: number;
  /** The thinner strength for lighter bands that share the wash. */
  readonly weakLoad: number | null;
}

/** One active family at one wash. */
export interface ActiveFamily {
  readonly work: FamilyWork;
  /** The paints it keeps to, as bits. */
  readonly mask: number;
  readonly ground: Ground;
}

export interface JudgedStroke {
  /** Area-weighted; Infinity where it would lighten the ground. */
  readonly cost: number;
  readonly stroke: Stroke;
}

/**
 * An option's best loads for a family's wash; null where the family has nothing to paint. `closely`
 * finds the loads exactly, else they are read off between two look loads.
 */
export function strokeOf(
  option: PuddleOption,
  { work, ground }: ActiveFamily,
  wash: number,
  closely: boolean,
): JudgedStroke | null {
  const goal = work.washes[wash];
  if (!goal) return null;
  const loadFor = (wanted: typeof goal.full): { load: number; cost: number } => {
    lookAtPuddle(option, wanted, ground);
    const { load, cost } = look;
    return closely ? bestLoad(option, load, wanted, ground) : { load, cost };
  };
  const full = loadFor(goal.full);
  const weak = goal.weak ? loadFor(goal.weak) : null;
  const targets = [...goal.full.targets, ...(goal.weak?.targets ?? [])];
  const area = targets.reduce((all, { weight }) => all + weight, 0);
  const plainness = perMixedPaint * (option.members.length - 1) + stiffness(full.load);
  return {
    cost: full.cost + (weak?.cost ?? 0) + plainness * area,
    stroke: { option, load: full.load, weakLoad: weak?.load ?? null },
  };
}
