import { expect, test } from 'vitest';
import { isWhiteOrBlack, type Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  buildMixLibrary,
  LibraryMemo,
  mostSearched,
  usualPaints,
} from '../../../../../app/core/palette/library/mix-library.ts';
import { isDistinctPalette } from '../../../../../app/core/palette/offers/best-set-by-trait.ts';
import { paintLosses } from '../../../../../app/core/palette/offers/palette-gaps.ts';
import { CostTables } from '../../../../../app/core/palette/search/cost-tables.ts';
import { priceOf } from '../../../../../app/core/palette/search/paint-price.ts';
import { paletteTargets } from '../../../../../app/core/palette/search/palette-targets.ts';
import { greedySearch, scoreSet } from '../../../../../app/core/palette/search/score-set.ts';
import { openSearch } from '../../../../../app/core/palette/search/search-palette.ts';
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
const some = paintBox.filter(({ ci }, n) => n % 6 === 0 && !isWhiteOrBlack(ci));
const wide = { box: some.map(({ id }) => id) };
const idsOf = (paints: readonly Paint[]): string[] => paints.map(({ id }) => id);

test('what is lost without a paint is what the search says of the rest', async () => {
  const { paints, tables, targets, ties } = await openSearch(
    slots,
    some,
    wide,
    noCheckpoint,
    library,
  );
  const members = ties[0]?.members ?? [];
  expect(members.length).toBeGreaterThan(2);
  const whole = scoreSet(tables, targets, members);
  expect(whole.cost).toBeCloseTo(ties[0]?.cost ?? 0, 9);
  const losses = paintLosses(tables, targets, members, families);
  for (const [n, out] of members.entries()) {
    const left = members.filter((each) => each !== out).map((each) => paints[each] as Paint);
    const chosen = idsOf(left);
    const rest = await openSearch(slots, some, { ...wide, chosen }, noCheckpoint, library);
    // A set costs less by the price of the paint it does without.
    const price = priceOf(paints[out] as Paint, true);
    const lost = (rest.ties[0]?.cost ?? 0) + price - whole.cost;
    expect(losses[n]?.furtherOff).toBeCloseTo(lost, 5);
    const byFamily = losses[n]?.families.reduce(
      (all, each) => all + each.share * each.furtherOff,
      0,
    );
    expect(byFamily).toBeCloseTo(losses[n]?.furtherOff ?? Number.NaN, 9);
  }
});

test('taking the best paint each time is never better than the exact search', async () => {
  for (const size of [1, 2, 3, 4, 5]) {
    const wishes = { ...wide, paletteSize: size };
    const { tables, targets, ties } = await openSearch(slots, some, wishes, noCheckpoint, library);
    const greedy = greedySearch(tables, targets, [], size);
    expect(greedy.members.length).toBeLessThanOrEqual(size);
    const exact = ties[0];
    if (exact && greedy.darkest <= exact.darkest) {
      expect(greedy.cost).toBeGreaterThanOrEqual(exact.cost - 1e-9);
    }
    expect(ties.length).toBeLessThanOrEqual(12);
    expect(ties.at(-1)?.cost).toBeLessThanOrEqual((exact?.cost ?? 0) + 1);
  }
});

test('a box too large for it, by a shortlist, gives a palette as good as the exact search', async () => {
  for (const [seed, must] of [
    [0, []],
    [2, ['pv23-dioxazine-violet']],
  ] as const) {
    const box = paintBox.filter(
      ({ id, ci }, n) =>
        must.some((each) => each === id) || (n % 5 === seed && !isWhiteOrBlack(ci)),
    );
    const wishes = { box: idsOf(box), paletteSize: 4, must };
    const mixed = new LibraryMemo();
    const whole = await openSearch(slots, box, wishes, noCheckpoint, mixed);
    const found = await openSearch(slots, box, wishes, noCheckpoint, mixed, { most: 16 });
    expect(found.paints.length).toBeLessThanOrEqual(16);
    expect(idsOf(found.paints)).toEqual(expect.arrayContaining([...must]));
    expect(found.ties[0]?.cost).toBeLessThanOrEqual((whole.ties[0]?.cost ?? 0) + 0.1);
  }
});

test('among more paints than are searched exactly it finds a palette no dearer than among some of them, and can be stopped', async () => {
  const few = usualPaints.filter((_, n) => n % 3 === 0);
  const many = paintBox.filter(
    (paint, n) => (n % 5 < 2 && !isWhiteOrBlack(paint.ci)) || few.includes(paint),
  );
  expect(many.length).toBeGreaterThan(mostSearched);
  const parts: number[] = [];
  const mixed = new LibraryMemo();
  const box = idsOf(many);
  const found = await openSearch(
    slots,
    many,
    { box },
    async (part) => {
      parts.push(part);
    },
    mixed,
  );
  expect(found.paints.length).toBeLessThanOrEqual(mostSearched);
  expect(parts).toEqual(parts.toSorted((one, two) => one - two));
  expect(Math.max(...parts)).toBeLessThanOrEqual(1);
  const known = await openSearch(slots, few, { box: idsOf(few) }, noCheckpoint, mixed);
  expect(found.ties[0]?.cost).toBeLessThanOrEqual((known.ties[0]?.cost ?? 0) + 0.1);
  let pauses = 0;
  const stop = async (): Promise<void> => {
    pauses += 1;
    if (pauses === 20) throw new Error('stopped');
  };
  const stopped = openSearch(slots, many, { box }, stop, new LibraryMemo());
  await expect(stopped).rejects.toThrow('stopped');
});

test('library and tables for 40 paints and 24 colours stay under 100 MB', async () => {
  const few = some.slice(0, 4);
  const built = await buildMixLibrary(few, noCheckpoint);
  const bytesOf = (size: number): number => {
    const group = built.groups.find(({ members }) => members.length === size);
    return (group?.lightness.byteLength ?? 0) + (group?.chroma.byteLength ?? 0);
  };
  const targets = paletteTargets(slots);
  const tables = await CostTables.of(
    built,
    targets,
    few.map(() => 0),
    noCheckpoint,
  );
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
