import { describe, expect, test } from 'vitest';
import { combinations } from '../../../../../app/core/numeric/combinations.ts';
import type { Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { LibraryMemo } from '../../../../../app/core/palette/library/mix-library.ts';
import {
  bestSetByTrait,
  granulationOf,
  isDistinctPalette,
  isMore,
  type SearchedCharacter,
} from '../../../../../app/core/palette/offers/best-set-by-trait.ts';
import { CostTables } from '../../../../../app/core/palette/search/cost-tables.ts';
import { againstPaints } from '../../../../../app/core/palette/search/paint-price.ts';
import { scoreSet } from '../../../../../app/core/palette/search/score-set.ts';
import type { PaletteSearch } from '../../../../../app/core/palette/search/search-palette.ts';

// What is found is held against all sets looked at one by one. That one is offered only with one paint fewer, 0.22 less
// against it or 0.25 more granulation, and with no more than one paint more: (own).
const ids = [
  ...['py43-yellow-ochre', 'py74-arylide-yellow', 'pv19-quinacridone-red', 'pr101-red-iron'],
  ...['pb29-ultramarine-blue', 'pb153-phthalocyanine-blue', 'pbr7-burnt-sienna'],
];
const paints = ids.map((id) => paintBox.find((paint) => paint.id === id) as Paint);
const targets = [
  { lab: [80, 4, 30], weight: 0.4, band: 1, family: 1 },
  { lab: [52, -8, -14], weight: 0.4, band: 2, family: 2 },
  { lab: [24, 6, 2], weight: 0.2, band: 3, family: 1 },
] as const;
const made = (async () => {
  const library = await new LibraryMemo().libraryOf(paints, noCheckpoint);
  return CostTables.of(
    library,
    targets,
    paints.map(() => 0.1),
    noCheckpoint,
  );
})();
const searchOf = async (size = 6, must: readonly number[] = []): Promise<PaletteSearch> => ({
  ...{ paints, targets, ties: [], tables: await made },
  wishes: { size, must, darkest: 100 },
});
const gains = { fewest: 1, cleanest: 0.22, granulating: 0.25 };
const more = { fewest: -1, cleanest: 1, granulating: 1 };
const rates = {
  fewest: (set: readonly Paint[]) => set.length,
  cleanest: againstPaints,
  granulating: (set: readonly Paint[]) => -granulationOf(set),
};
const paintsAt = (members: readonly number[]): Paint[] => members.map((n) => paints[n] as Paint);

/** The same from all sets, one by one. */
async function slowBest(
  character: SearchedCharacter,
  seen: readonly (readonly number[])[],
  atMost: number,
  { wishes: { size, must } }: PaletteSearch,
): Promise<readonly number[] | null> {
  const tables = await made;
  const own = rates[character];
  const [first = []] = seen;
  const most = Math.min(size, first.length + more[character]);
  const sets = Array.from({ length: Math.max(0, most) }, (_, n) =>
    combinations(paints.length, n + 1),
  )
    .flatMap((all) => [...all])
    .filter((set) => must.every((n) => set.includes(n)))
    .filter((set) => own(paintsAt(set)) <= own(paintsAt(first)) - gains[character])
    .filter((set) => seen.every((one) => isDistinctPalette(set, one)))
    .map((set) => ({ set, rate: own(paintsAt(set)), cost: scoreSet(tables, targets, set).cost }))
    .filter(({ cost }) => cost <= atMost)
    .sort((one, two) => one.rate - two.rate || one.cost - two.cost);
  return sets[0]?.set ?? null;
}

describe.each(['fewest', 'cleanest', 'granulating'] as const)('%s', (character) => {
  test('the best of all sets that may be offered is found, or none', async () => {
    const search = await searchOf();
    let found = 0;
    for (const seen of [
      [[0, 2, 4, 6]],
      [[1, 3, 5]],
      [
        [0, 3, 4, 6],
        [1, 2, 5],
      ],
      [[0, 1, 2, 3, 4]],
      [[4]],
      [
        [1, 2],
        [4, 5],
      ],
    ])
      for (const atMost of [2, 5, 9, 30]) {
        const best = await bestSetByTrait(
          character,
          seen.map(paintsAt),
          atMost,
          search,
          noCheckpoint,
        );
        expect(best?.members ?? null).toEqual(await slowBest(character, seen, atMost, search));
        if (best) found++;
      }
    expect(found).toBeGreaterThan(3); // else the test would have looked at nothing
  });

  test('paints she wants are in it, and it is no larger than she wants', async () => {
    for (const [size, must] of [
      [3, [5]],
      [2, [0, 5]],
      [1, [0, 5]],
      [4, [6]],
    ] as const) {
      const search = await searchOf(size, must);
      const seen = [[0, 2, 4, 6]];
      const best = await bestSetByTrait(character, seen.map(paintsAt), 30, search, noCheckpoint);
      const wanted = size < must.length ? null : await slowBest(character, seen, 30, search);
      expect(best?.members ?? null).toEqual(wanted);
    }
  });
});

test('another palette is smaller, or has two paints that are not in the first', () => {
  const four = [1, 2, 3, 4];
  expect(isDistinctPalette([1, 2, 3], four)).toBe(true);
  expect(isDistinctPalette([1, 2, 3, 5], four)).toBe(false);
  expect(isDistinctPalette([1, 2, 5, 6], four)).toBe(true);
  expect(isDistinctPalette([1, 2, 3, 4, 5], four)).toBe(false);
  expect(isDistinctPalette([1, 2, 3, 4, 5, 6], four)).toBe(true);
});

test('how much paints granulate is their mean; what nobody knows counts as nothing', () => {
  const paint = (granulation: 0 | 1 | 2 | null): Paint =>
    ({ properties: { granulation } }) as unknown as Paint;
  expect([granulationOf([paint(2), paint(0), paint(null), paint(2)]), granulationOf([])]).toEqual([
    1, 0,
  ]);
  const [some, one] = [
    [paint(1), paint(1)],
    [paint(1), paint(2)],
  ];
  expect(isMore('granulating', one, some)).toBe(true); // by half
  expect(
    isMore('granulating', [...one, paint(0), paint(1)], [paint(1), paint(1), paint(1), paint(0)]),
  ).toBe(true);
  expect(isMore('granulating', some, some)).toBe(false);
  expect([isMore('fewest', some.slice(1), some), isMore('fewest', some, some)]).toEqual([
    true,
    false,
  ]);
});
