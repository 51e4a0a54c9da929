import { expect, it } from 'vitest';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  usualPaints,
} from '../../../../../app/core/palette/library/mix-library.ts';
import { costsOf } from '../../../../../app/core/palette/search/cost-rows.ts';
import { CostTables } from '../../../../../app/core/palette/search/cost-tables.ts';
import { PairBounds } from '../../../../../app/core/palette/search/pair-bounds.ts';
import type { PaletteTarget } from '../../../../../app/core/palette/search/palette-targets.ts';

const targets: PaletteTarget[] = [
  { lab: [80, 4, 30], weight: 0.4, band: 1, family: 1 },
  { lab: [52, -8, -14], weight: 0.4, band: 2, family: 2 },
  { lab: [24, 6, 2], weight: 0.2, band: 3, family: 1 },
];

// Paints, order and the paint in every set are (own).
it('is the least of the mixes with both paints, of paints from a place on and those in every set', async () => {
  const paints = usualPaints.slice(0, 7);
  const library = await buildMixLibrary(paints, noCheckpoint);
  const prices = paints.map(() => 0);
  const tables = await CostTables.of(library, targets, prices, noCheckpoint);
  const order = Int32Array.of(5, 0, 6, 2, 3, 1);
  const must = [4];
  const bounds = new PairBounds(tables, order, must);
  const [pairs, pairsFrom] = [costsOf(bounds.pairs), costsOf(bounds.pairsFrom)];
  for (const first of [0, 1, 4, 2]) {
    bounds.begin(first);
    const allowed = [...must, ...order.slice(first)];
    const leastOf = (wanted: (members: readonly number[]) => boolean, t: number): number =>
      Math.min(
        ...tables.groups.flatMap((members, group) =>
          members.every((member) => allowed.includes(member)) && wanted(members)
            ? [tables.costs[group * targets.length + t] ?? 0]
            : [],
        ),
      );
    for (const t of targets.keys()) {
      for (let one = first; one < order.length; one++) {
        const later = [...order.slice(one)];
        expect(pairsFrom[one * targets.length + t]).toBe(
          leastOf((members) => members.filter((each) => later.includes(each)).length > 1, t),
        );
        for (let two = one + 1; two < order.length; two++) {
          const pair = [order[one], order[two]];
          expect(pairs[bounds.rowOf(one, two) * targets.length + t]).toBe(
            leastOf((members) => pair.every((each) => members.includes(each ?? -1)), t),
          );
        }
      }
    }
  }
});
