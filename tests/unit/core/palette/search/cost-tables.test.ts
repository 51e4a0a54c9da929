import { expect, it } from 'vitest';
import { combinations } from '../../../../../app/core/numeric/combinations.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { LibraryMemo } from '../../../../../app/core/palette/library/mix-library.ts';
import { CostTables, certainBelow } from '../../../../../app/core/palette/search/cost-tables.ts';
import { GroupCosts } from '../../../../../app/core/palette/search/group-costs.ts';
import type { PaletteTarget } from '../../../../../app/core/palette/search/palette-targets.ts';

const targets: PaletteTarget[] = [
  { lab: [80, 4, 30], weight: 0.4, band: 1, family: 1 },
  { lab: [52, -8, -14], weight: 0.4, band: 2, family: 2 },
  { lab: [24, 6, 2], weight: 0.2, band: 3, family: 1 },
];

it('takes over the costs of mixes that another box had, and finds the same as without', async () => {
  const memo = new LibraryMemo();
  const known = memo.costsFor(targets.map(({ lab }) => lab));
  for (const [from, to] of [
    [0, 9],
    [2, 11],
    [0, 9],
  ] as const) {
    const paints = paintBox.slice(from, to);
    const prices = paints.map(() => 0);
    const library = await memo.libraryOf(paints, noCheckpoint);
    const plain = await CostTables.of(library, targets, prices, noCheckpoint);
    const tables = await CostTables.of(library, targets, prices, noCheckpoint, known);
    expect(tables.costs).toEqual(plain.costs);
  }
});

it('keeps costs apart by the colours they are of', () => {
  const memo = new LibraryMemo();
  const [one, two] = [targets.slice(0, 2), targets.slice(1)].map((some) =>
    some.map(({ lab }) => lab),
  );
  expect(memo.costsFor(one ?? [])).toBe(memo.costsFor([...(one ?? [])]));
  expect(memo.costsFor(one ?? [])).not.toBe(memo.costsFor(two ?? []));
});

it('says what a set costs in full, also where no mix of it comes near a colour', async () => {
  const paints = paintBox.filter((_, n) => n % 9 === 0);
  const far: PaletteTarget[] = [
    ...targets,
    { lab: [50, 70, -60], weight: 0.1, band: 2, family: 3 },
  ];
  const library = await new LibraryMemo().libraryOf(paints, noCheckpoint);
  const prices = paints.map(() => 0);
  const tables = await CostTables.of(library, far, prices, noCheckpoint);
  const plain = new GroupCosts(far);
  let above = 0;
  for (const members of combinations(paints.length, 4)) {
    const groups = tables.groupsIn(members);
    expect(groups).toHaveLength(14);
    const least = new Float32Array(far.length).fill(Number.POSITIVE_INFINITY);
    for (const n of groups) {
      const group = library.groups[n];
      if (group) plain.write(group, least.slice(), least, 0);
    }
    expect(tables.leastOf(groups)).toEqual(least);
    above += least.filter((cost) => cost >= certainBelow).length;
  }
  // Else the test would not have looked at it (own).
  expect(above).toBeGreaterThan(20);
});
