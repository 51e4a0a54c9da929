import { LibraryMemo, usualPaints } from '../../app/core/palette/library/mix-library.ts';
import { branchAndBound } from '../../app/core/palette/search/branch-and-bound.ts';
import type { CostTables } from '../../app/core/palette/search/cost-tables.ts';
import type { PaletteTarget } from '../../app/core/palette/search/palette-targets.ts';
import { greedySearch, scoreSet } from '../../app/core/palette/search/score-set.ts';
import {
  mostTies,
  nearTie,
  openSearch,
  type PaletteSearch,
} from '../../app/core/palette/search/search-palette.ts';
import type { Reading } from '../../app/core/reading/reading.ts';
import forest from '../fixtures/readings/forest-stream.json';
import snow from '../fixtures/readings/mountain-snow.json';
import type { Bench } from './bench.ts';
import { noPause } from './read-bytes.ts';

/** Every second paint: what the bench shows does not hang on the number, and its tables are made in a second. */
const some = usualPaints.filter((_, n) => n % 2 === 0);
const size = 5;

/**
 * What it costs to grab whatever looks like the photo: for every colour the single paint that is nearest to it,
 * and of these the `size` that are nearest over most of the area; mixes of them are allowed.
 */
function costOfNearestSingles(tables: CostTables, targets: readonly PaletteTarget[]): number {
  const areas = new Map<number, number>();
  for (const [t, { weight }] of targets.entries()) {
    let nearest = 0;
    const cost = (paint: number): number =>
      tables.costs[tables.indexOf([paint]) * targets.length + t] as number;
    for (let paint = 1; paint < tables.paintCount; paint++) {
      if (cost(paint) < cost(nearest)) nearest = paint;
    }
    areas.set(nearest, (areas.get(nearest) ?? 0) + weight);
  }
  const most = [...areas].sort((one, two) => two[1] - one[1] || one[0] - two[0]).slice(0, size);
  const members = most.map(([paint]) => paint).sort((x, y) => x - y);
  return scoreSet(tables, targets, members).cost;
}

export async function benches(): Promise<Bench[]> {
  const readings = [forest, snow] as unknown as readonly Reading[];
  const searches: PaletteSearch[] = [];
  const library = new LibraryMemo();
  for (const { slots } of readings) {
    searches.push(await openSearch(slots, some, {}, noPause, library));
  }
  const costs = searches.map(({ tables, targets, ties }) => {
    const exact = ties[0]?.cost ?? Number.NaN;
    const greedy = greedySearch(tables, targets, [], size).cost;
    const singles = costOfNearestSingles(tables, targets);
    return `exact ${exact.toFixed(2)}, greedy ${greedy.toFixed(2)}, nearest single paints ${singles.toFixed(2)}`;
  });
  const exact = async () => {
    let sets = 0;
    for (const { tables, targets, wishes } of searches) {
      sets += (await branchAndBound(nearTie, mostTies, tables, targets, wishes, noPause)).length;
    }
    return sets;
  };
  return [
    {
      name: 'palette of at most five',
      work: `${some.length} paints, two readings, tables made before; the peer takes the best paint each time and misses sets (it is where ours begins)`,
      ours: { name: 'the sets of least cost within a near tie, exact', run: exact },
      peer: {
        name: 'one paint after the other',
        run: () =>
          searches.map(({ tables, targets }) => greedySearch(tables, targets, [], size).cost),
      },
      agreement: `cost: ${costs.join('; ')}`,
    },
  ];
}
