import { expect, test } from 'vitest';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  usualPaints,
} from '../../../../../app/core/palette/library/mix-library.ts';
import { CostTables } from '../../../../../app/core/palette/search/cost-tables.ts';
import { paletteTargets } from '../../../../../app/core/palette/search/palette-targets.ts';
import { greedySearch } from '../../../../../app/core/palette/search/score-set.ts';
import { shortlist } from '../../../../../app/core/palette/search/search-palette.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const some = usualPaints.filter((_, n) => n % 4 === 0);
const { slots } = madeReading(
  tableOf(
    [96, 70, 40, 22],
    [
      [-10, 20],
      [2, -18],
      [30, 24],
    ],
  ),
);
const targets = paletteTargets(slots);
const tables = await CostTables.of(
  await buildMixLibrary(some, noCheckpoint, undefined, [1, 2]),
  targets,
  some.map(() => 0),
  noCheckpoint,
);
const paints = [...some.keys()];
const pick = (must: readonly number[], size: number, most: number) =>
  shortlist(tables, targets, { must, size }, most);

test('the paints a palette is best built around, by what the best found with each costs', () => {
  const cost = paints.map((paint) => greedySearch(tables, targets, [paint], 3).cost);
  const rising = cost.toSorted((one, two) => one - two);
  // Enough of them differ for an order to show (own).
  expect(new Set(rising).size).toBeGreaterThan(3);
  for (const most of [1, 3, 5]) {
    const found = pick([], 3, most);
    expect(found).toHaveLength(most);
    expect(found).toEqual(found.toSorted((one, two) => one - two));
    expect(
      found.map((paint) => cost[paint]).toSorted((one, two) => (one ?? 0) - (two ?? 0)),
    ).toEqual(rising.slice(0, most));
  }
  expect(pick([], 3, 99)).toEqual(paints);
});

test('paints that must be in are in, however many; the others are ranked beside them', () => {
  const dear = paints.toSorted(
    (one, two) =>
      greedySearch(tables, targets, [two], 3).cost - greedySearch(tables, targets, [one], 3).cost,
  );
  const [worst = 0, next = 0] = dear;
  const pair = [worst, next].toSorted((one, two) => one - two);
  expect(pick(pair, 3, 1)).toEqual(pair);
  const three = pick(pair, 3, 3);
  expect(three).toEqual(expect.arrayContaining(pair));
  const cost = (paint: number) =>
    greedySearch(
      tables,
      targets,
      [...pair, paint].toSorted((one, two) => one - two),
      3,
    ).cost;
  const others = paints.filter((paint) => !pair.includes(paint));
  const added = three.find((paint) => !pair.includes(paint)) ?? -1;
  expect(cost(added)).toBe(Math.min(...others.map(cost)));
  // With no room for another the first of the box fill up the list.
  expect(pick(pair, 2, 4)).toEqual(
    [...pair, ...others.slice(0, 2)].toSorted((one, two) => one - two),
  );
});
