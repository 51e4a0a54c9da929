import type { Bench } from './bench.ts';
import { bestContinuous, bestWhole, rounded, seededCases } from './whole-parts-loss.ts';

/** The figures of the project come from 200 targets: WHOLE_PARTS_TARGETS=200 (minutes). */
const count = Number(process.env.WHOLE_PARTS_TARGETS ?? 1);
/** Five as in a palette; one fewer where it is only kept from rotting, for that is four triples instead of ten. */
const paints = process.env.WHOLE_PARTS_TARGETS ? 5 : 4;

const mean = (all: readonly number[]): string =>
  (all.reduce((sum, each) => sum + each, 0) / all.length).toFixed(2);

/** What whole parts cost against any shares, and what rounding those shares would cost. */
export function bench(): Bench {
  const cases = seededCases(count, 11, paints);
  const rows = cases.map((each) => {
    const free = bestContinuous(each);
    const eight = bestWhole(each, 8).difference;
    const twelve = bestWhole(each, 12).difference;
    const least = Math.min(free.difference, eight, twelve);
    return { least, eight, twelve, rounded: rounded(each, free) };
  });
  const first = cases[0];
  if (!first) throw new RangeError('WHOLE_PARTS_TARGETS: a whole number from 1.');
  const loss = (of: 'eight' | 'twelve' | 'rounded'): number[] =>
    rows.map((row) => row[of] - row.least);
  const over = loss('eight').filter((each) => each > 3).length;
  return {
    name: 'whole parts',
    work: `one target mixed from ${paints} paints: all whole parts of sum 8 one by one; the other side any shares, rounded`,
    ours: { name: 'whole parts, searched', run: () => bestWhole(first, 8) },
    peer: { name: 'any shares, rounded', run: () => rounded(first, bestContinuous(first)) },
    agreement: `${count} targets, CIEDE2000: loss of sum 8 ${mean(loss('eight'))}, of sum 12 ${mean(loss('twelve'))}, of rounding ${mean(loss('rounded'))}; ${over} over 3; to the target ${mean(rows.map(({ eight }) => eight))}`,
  };
}
