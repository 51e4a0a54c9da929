import { expect, test } from 'vitest';
import { decidedWhites } from '../../../../app/core/decisions/decided-reading.ts';
import type { Decision } from '../../../../app/core/decisions/painting.ts';
import type { Reading } from '../../../../app/core/reading/reading.ts';
import type { White, WhiteWay } from '../../../../app/core/reading/whites/whites.ts';
import { placeOnPhoto } from '../../../../app/core/reference/photo-stroke.ts';
import { centredCrop, type Reference } from '../../../../app/core/reference/reference.ts';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';
import { painted, readFor } from '../../../support/reading/rasters.ts';

type Cut = Pick<Reference, 'crop' | 'sheet'>;

const photo = { width: 400, height: 300 };
const quarter = sheetOf('quarter', 'across');
const cut: Cut = { sheet: quarter, crop: centredCrop(photo, quarter) };

const white = (x: number, y: number, shortSideMm = 8): White => ({
  at: [x, y],
  slot: 0,
  areaMm2: 100,
  shortSideMm,
  softShare: 0,
  byHand: false,
  way: 'round',
  why: 'so',
});
const readingOf = (whites: readonly White[]): Reading =>
  ({ sheet: { widthMm: 381, heightMm: 279 }, whites }) as unknown as Reading;

let count = 0;
const choose = (
  at: readonly [number, number] | null,
  way: WhiteWay | null,
  of = cut,
): Decision => ({
  id: String(++count),
  at: count,
  kind: 'white-way',
  place: at && placeOnPhoto(of, at),
  way,
});
const waysOf = (reading: Reading): (string | null)[] =>
  (reading.whites ?? []).map(({ way, decided }) => (decided ? way : null));

test('the way goes to the white she touched, also with another close by', () => {
  const reading = readingOf([white(0.5, 0.5), white(0.53, 0.5), white(0.9, 0.1)]);
  expect(waysOf(decidedWhites(reading, [choose([0.53, 0.5], 'mask')], cut))).toEqual([
    null,
    'mask',
    null,
  ]);
  const both = [choose([0.53, 0.5], 'mask'), choose([0.5, 0.5], 'last')];
  expect(waysOf(decidedWhites(reading, both, cut))).toEqual(['last', 'mask', null]);
});

test('the last word counts; as proposed takes it back; undone is as never said', () => {
  const reading = readingOf([white(0.5, 0.5)]);
  const mask = choose([0.5, 0.5], 'mask');
  const last = choose([0.5, 0.5], 'last');
  expect(waysOf(decidedWhites(reading, [mask, last], cut))).toEqual(['last']);
  const undo: Decision = { id: 'u', at: 9, kind: 'undo', undoes: last.id };
  expect(waysOf(decidedWhites(reading, [mask, last, undo], cut))).toEqual(['mask']);
  const asProposed = decidedWhites(reading, [mask, choose([0.5, 0.5], null)], cut);
  expect(asProposed.whites).toEqual(reading.whites);
});

test('one word for all small whites, single words before and after it', () => {
  const reading = readingOf([white(0.2, 0.2, 12), white(0.5, 0.5, 2), white(0.8, 0.8, 0.7)]);
  const all = choose(null, 'mask');
  const one = choose([0.8, 0.8], 'last');
  expect(waysOf(decidedWhites(reading, [all, one], cut))).toEqual([null, 'mask', 'last']);
  expect(waysOf(decidedWhites(reading, [one, all], cut))).toEqual([null, 'mask', 'mask']);
});

test('a white that is gone leaves the others alone; without decisions nothing is touched', () => {
  const reading = readingOf([white(0.5, 0.5)]);
  const gone = decidedWhites(reading, [choose([0.5, 0.6], 'mask')], cut);
  expect(gone.whites).toEqual(reading.whites);
  expect(decidedWhites(reading, [], cut)).toBe(reading);
  const older = { ...reading, whites: undefined } as unknown as Reading;
  expect(decidedWhites(older, [choose([0.5, 0.5], 'mask')], cut)).toBe(older);
});

test('the middle of a large white may move within it', () => {
  const reading = readingOf([white(0.5, 0.5, 150)]);
  expect(waysOf(decidedWhites(reading, [choose([0.6, 0.5], 'mask')], cut))).toEqual(['mask']);
});

test('found again in a new reading, on a smaller sheet and in a tighter cut', async () => {
  const discs = [
    [42, 45, 24],
    [130, 50, 18],
    [90, 112, 21],
  ] as const;
  const seen = (left: number, top: number, width: number, height: number) =>
    painted(width, height, (x, y) =>
      discs.some(([cx, cy, r]) => (x + left - cx) ** 2 + (y + top - cy) ** 2 < r * r)
        ? [250, 250, 250]
        : [60, 70, (x + y) % 60],
    );
  const whole: Cut = { sheet: quarter, crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 } };
  const first = await readFor(seen(0, 0, 200, 150));
  expect(first.reading.whites).toHaveLength(3);
  const smallest = first.reading.whites?.[2];
  const said = [choose([130 / 200, 50 / 150], 'mask', whole)];
  expect(waysOf(decidedWhites(first.reading, said, whole))).toEqual([null, null, 'mask']);
  expect(smallest?.at[0]).toBeCloseTo(130 / 200, 1);

  const a5 = sheetOf('a5', 'across');
  const small = await readFor(seen(0, 0, 200, 150), {}, a5);
  const onA5: Cut = { ...whole, sheet: a5 };
  expect(waysOf(decidedWhites(small.reading, said, onA5))).toEqual([null, null, 'mask']);

  const tight: Cut = { sheet: quarter, crop: { centre: [0.6, 0.5], size: [0.6, 0.8], turn: 0 } };
  const cropped = await readFor(seen(60, 15, 120, 120));
  const found = decidedWhites(cropped.reading, said, tight).whites?.filter(
    ({ decided }) => decided,
  );
  expect(found).toHaveLength(1);
  expect(found?.[0]?.at[0]).toBeCloseTo((130 - 60) / 120, 1);
});
