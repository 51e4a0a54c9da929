import { expect, test } from 'vitest';
import { isWhiteOrBlack, type Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  LibraryMemo,
} from '../../../../../app/core/palette/library/mix-library.ts';
import { isDistinctPalette } from '../../../../../app/core/palette/offers/best-set-by-trait.ts';
import { paintLosses } from '../../../../../app/core/palette/offers/palette-gaps.ts';
import { CostTables, paletteTargets } from '../../../../../app/core/palette/search/cost-tables.ts';
import { greedySearch, scoreSet } from '../../../../../app/core/palette/search/score-set.ts';
import {
  openSearch,
  searchPalette,
} from '../../../../../app/core/palette/search/search-palette.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

const library = new LibraryMemo();

const reading = madeReading(
  tableOf(
    [95, 66, 40, 24],
    [
      [-14, 20],
      [12, 16],
      [0, -20],
    ],
  ),
);
const { slots, families } = reading;
const some = paintBox.filter(({ ci }, n) => n % 4 === 0 && !isWhiteOrBlack(ci));
const idsOf = (paints: readonly Paint[]): string[] => paints.map(({ id }) => id);

test('what is lost without a paint is what the search says of the rest', async () => {
  const { paints, tables, targets, ties } = await openSearch(
    slots,
    some,
    {},
    noCheckpoint,
    library,
  );
  const members = ties[0]?.members ?? [];
  expect(members.length).toBeGreaterThan(2);
  const whole = scoreSet(tables, targets, members);
  expect(whole.cost).toBeCloseTo(ties[0]?.cost ?? 0, 9);
  const losses = paintLosses(tables, targets, members, families);
  for (const [n, out] of members.entries()) {
    const chosen = idsOf(
      members.filter((each) => each !== out).map((each) => paints[each] as Paint),
    );
    const rest = await searchPalette(slots, some, { chosen }, noCheckpoint, library);
    // A set costs 0.3 less for the paint it does without.
    expect(losses[n]?.furtherOff).toBeCloseTo(rest.cost + 0.3 - whole.cost, 5);
    const byFamily = losses[n]?.families.reduce(
      (all, each) => all + each.share * each.furtherOff,
      0,
    );
    expect(byFamily).toBeCloseTo(losses[n]?.furtherOff ?? Number.NaN, 9);
  }
});

test('taking the best paint each time is never better than the exact search', async () => {
  for (const size of [1, 2, 3, 4, 5]) {
    const wishes = { paletteSize: size };
    const { tables, targets, ties } = await openSearch(slots, some, wishes, noCheckpoint, library);
    const greedy = greedySearch(tables, targets, [], size);
    expect(greedy.members.length).toBeLessThanOrEqual(size);
    const exact = ties[0];
    if (exact && greedy.darkest <= exact.darkest) {
      expect(greedy.cost).toBeGreaterThanOrEqual(exact.cost - 1e-9);
    }
    const dearest = ties.at(-1)?.cost ?? 0;
    expect(dearest).toBeLessThanOrEqual((exact?.cost ?? 0) + 0.1);
  }
});

test('library and tables for 40 paints and 24 colours stay under 100 MB', async () => {
  const few = some.slice(0, 4);
  const built = await buildMixLibrary(few, noCheckpoint);
  const bytesOf = (size: number): number => {
    const group = built.groups.find(({ members }) => members.length === size);
    return (group?.lightness.byteLength ?? 0) + (group?.chroma.byteLength ?? 0);
  };
  const targets = paletteTargets(slots);
  const tables = await CostTables.of(built, targets, noCheckpoint);
  const perGroup = 4 * 24 + 4; // costs and darkest, as the next lines check
  expect(tables.costs.byteLength / built.groups.length).toBe(4 * targets.length);
  expect(tables.darkest.byteLength / built.groups.length).toBe(4);
  const counts = [40, (40 * 39) / 2, (40 * 39 * 38) / 6];
  const bytes = counts.reduce((all, count, n) => all + count * (bytesOf(n + 1) + perGroup), 0);
  expect(bytes).toBeGreaterThan(30e6); // 40 paints are no small matter
  expect(bytes).toBeLessThan(100e6);
});

test('another palette is smaller, or has two paints the first has not', () => {
  expect(isDistinctPalette(['a', 'b'], ['a', 'b', 'c'])).toBe(true);
  expect(isDistinctPalette(['a', 'b', 'd'], ['a', 'b', 'c'])).toBe(false);
  expect(isDistinctPalette(['a', 'd', 'e'], ['a', 'b', 'c'])).toBe(true);
  expect(isDistinctPalette(['a', 'b', 'c', 'd'], ['a', 'b', 'c'])).toBe(false);
});
