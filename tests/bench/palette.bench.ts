import { isWhiteOrBlack } from '../../app/model/paint.ts';
import type { Reading } from '../../app/model/reading.ts';
import { paintBox } from '../../workers/kernels/optics/paint-box.ts';
import { bestSets } from '../../workers/kernels/palette/best-sets.ts';
import { noCheckpoint } from '../../workers/kernels/palette/checkpoint.ts';
import { greedySet } from '../../workers/kernels/palette/greedy-set.ts';
import { openSearch, type PaletteSearch } from '../../workers/kernels/palette/open-search.ts';
import forest from '../fixtures/readings/forest-stream.json';
import snow from '../fixtures/readings/mountain-snow.json';
import type { Bench } from './bench.ts';
import { nearestSingles } from './nearest-singles.ts';

/** Every second paint: what the bench shows does not hang on the number, and its tables are made in a second. */
const some = paintBox.filter(({ ci }, n) => n % 2 === 0 && !isWhiteOrBlack(ci));
const size = 5;

export async function bench(): Promise<Bench> {
  const readings = [forest, snow] as unknown as readonly Reading[];
  const searches: PaletteSearch[] = [];
  for (const { slots } of readings) searches.push(await openSearch(slots, some, {}, noCheckpoint));
  const costs = searches.map(({ tables, targets, ties }) => {
    const exact = ties[0]?.cost ?? Number.NaN;
    const greedy = greedySet(tables, targets, [], size).cost;
    const singles = nearestSingles(tables, targets, size).cost;
    return `exact ${exact.toFixed(2)}, greedy ${greedy.toFixed(2)}, nearest single paints ${singles.toFixed(2)}`;
  });
  return {
    name: 'palette of at most five',
    work: `${some.length} paints, two readings, tables made before; the peer takes the best paint each time and misses sets`,
    ours: {
      name: 'all sets, exact',
      run: async () => {
        for (const { tables, targets, wishes } of searches) {
          await bestSets(0, tables, targets, wishes, noCheckpoint);
        }
        return searches.length;
      },
    },
    peer: {
      name: 'one paint after the other',
      run: () => searches.map(({ tables, targets }) => greedySet(tables, targets, [], size).cost),
    },
    agreement: `cost: ${costs.join('; ')}`,
  };
}
