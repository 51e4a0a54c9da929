import type { SolvedWash } from '../plan-facts.ts';
import type { WashWork } from '../plan-work.ts';

const together = (one: readonly number[], other: readonly number[]): number[] =>
  [...new Set([...one, ...other])].sort((a, b) => a - b);

/** Both washes as one: all their slots, each row once, the first wash's rows first. */
function bothWashes(one: SolvedWash, other: SolvedWash): SolvedWash {
  const rows = new Map([...one.mixes, ...other.mixes].map((mix) => [mix.id, mix]));
  const full = together(one.full, other.full);
  return {
    wash: Math.min(one.wash, other.wash),
    full,
    weak: together(one.weak, other.weak).filter((band) => !full.includes(band)),
    mixes: [...rows.values()].sort((a, b) => a.wash - b.wash),
    slots: together(one.slots, other.slots),
    after: [],
  };
}

/** Two washes of one passage painted together; two goes of one wash are that wash again. */
export function mergeWashes(one: WashWork, other: WashWork): WashWork {
  const { change: _, whole, ...plain } = one;
  if (whole && whole === other.whole) return { ...plain, wash: whole };
  return { ...plain, wash: bothWashes(one.wash, other.wash), change: 'in one go' };
}
