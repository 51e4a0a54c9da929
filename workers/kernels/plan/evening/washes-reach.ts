import type { Lab } from '../../../../app/model/lab.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { planQuality } from '../plan-quality.ts';

/** How far a painted band ends from its planned value. */
export interface BandMiss {
  readonly band: number;
  /** Area-weighted mean of |dL*| over its slots. */
  readonly missed: number;
  /** The same with its sign: above 0 it stays too light. */
  readonly tooLight: number;
}

/** How near solved washes come to what was planned. */
export interface WashesReach {
  /** The band that is missed by most; undefined where nothing is painted. */
  readonly worst: BandMiss | undefined;
  /** Area-weighted mean CIEDE2000 over all painted slots. */
  readonly colour: number;
  /** Share of the painted area within 5 L*, 0..1. */
  readonly within5: number;
}

type Solved = Pick<PlanFacts, 'slots' | 'passages'>;

/** Dry colour of every slot after the last wash; undefined where nothing was painted. */
function lastColours({ slots, passages }: Solved): (Lab | undefined)[] {
  const last: (Lab | undefined)[] = slots.map(() => undefined);
  for (const wash of passages.flatMap(({ washes }) => washes)) {
    for (const [i, slot] of wash.slots.entries()) last[slot] = wash.after[i];
  }
  return last;
}

/** What the washes of a solved plan reach, before anything else is done to the sheet. */
export function washesReach(solved: Solved): WashesReach {
  const { slots } = solved;
  const last = lastColours(solved);
  const sums = new Map<number, { area: number; missed: number; tooLight: number }>();
  for (const [i, { band, share, target }] of slots.entries()) {
    const got = last[i];
    if (!got) continue;
    const sum = sums.get(band) ?? { area: 0, missed: 0, tooLight: 0 };
    const area = Math.max(share, 1e-6);
    const by = got[0] - target[0];
    sums.set(band, {
      area: sum.area + area,
      missed: sum.missed + area * Math.abs(by),
      tooLight: sum.tooLight + area * by,
    });
  }
  const misses = [...sums].map(([band, { area, missed, tooLight }]): BandMiss => {
    return { band, missed: missed / area, tooLight: tooLight / area };
  });
  misses.sort((one, two) => two.missed - one.missed || one.band - two.band);
  const { colour, within5 } = planQuality(
    slots,
    slots.map(({ target }, i) => last[i] ?? target),
  );
  return { worst: misses[0], colour, within5 };
}
