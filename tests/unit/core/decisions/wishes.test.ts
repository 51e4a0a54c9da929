import { expect, test } from 'vitest';
import type { Decision } from '../../../../app/core/decisions/painting.ts';
import type { PassagesChoice } from '../../../../app/core/decisions/plan-edit.ts';
import {
  chooseExactly,
  hasRoom,
  type PaletteWish,
  planWishes,
  readingWishes,
  releasePaint,
  resizePalette,
  searchedFreely,
  withoutPaint,
  withWishedPaint,
} from '../../../../app/core/decisions/wishes.ts';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import { sheetOf } from '../../../../app/core/reference/sheet.ts';

const free: PaletteWish = { n: 3, must: ['red'], exclude: ['green'] };
const chosen: PaletteWish = { ...free, chosen: ['red', 'blue'] };

test.each<[string, PaletteWish, PaletteWish]>([
  ['asked of the search', withWishedPaint(free, 'blue'), { ...free, must: ['red', 'blue'] }],
  [
    'asked for, though left out',
    withWishedPaint(free, 'green'),
    { n: 3, must: ['red', 'green'], exclude: [] },
  ],
  [
    'added to her choice',
    withWishedPaint(chosen, 'ochre'),
    { ...chosen, chosen: ['red', 'blue', 'ochre'] },
  ],
  ['asked for twice', withWishedPaint(free, 'red'), free],
  ['never searched for', withoutPaint(free, 'red'), { n: 3, must: [], exclude: ['green', 'red'] }],
  ['taken from her choice', withoutPaint(chosen, 'blue'), { ...chosen, chosen: ['red'] }],
  [
    'the last of her choice: searched again, without it',
    withoutPaint({ ...free, chosen: ['red'] }, 'red'),
    { n: 3, must: [], exclude: ['green', 'red'] },
  ],
  ['let be', releasePaint(free, 'green'), { ...free, exclude: [] }],
  ['just these', chooseExactly(free, ['a', 'b']), { ...free, chosen: ['a', 'b'] }],
  ['freely again', searchedFreely(chosen), free],
  ['another size is a search', resizePalette(chosen, 5), { ...free, n: 5 }],
  [
    'not under what she asked for',
    resizePalette({ ...free, must: ['a', 'b'] }, 1),
    { ...free, must: ['a', 'b'], n: 2 },
  ],
  ['at most seven', resizePalette(free, 9), { ...free, n: 7 }],
])('%s', (_, wish, expected) => {
  expect(wish).toEqual(expected);
});

test('room for one more', () => {
  expect(hasRoom(free)).toBe(true);
  expect(hasRoom({ ...free, n: 1 })).toBe(false);
  expect(hasRoom({ ...free, n: 1, chosen: ['a', 'b'] })).toBe(true);
  expect(hasRoom({ ...free, chosen: [...'abcdefg'] })).toBe(false);
});

const reference = {
  crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 },
  sheet: sheetOf('quarter', 'across'),
} as const;
const wishes = (decisions: readonly Decision[]) => readingWishes(decisions, reference);

const bands = (id: string, count: number): Decision => ({ id, at: 0, kind: 'bands', count });
const limits = (id: string, ...lightness: number[]): Decision => ({
  id,
  at: 0,
  kind: 'limits',
  lightness,
});

test('of a number of values and limits she set, the later counts', () => {
  expect(wishes([])).toEqual({});
  expect(wishes([bands('a', 5)])).toEqual({ bands: 5 });
  expect(wishes([bands('a', 5), limits('b', 30, 60)])).toEqual({ limits: [30, 60] });
  expect(wishes([limits('a', 30, 60), limits('b', 35, 60)])).toEqual({ limits: [35, 60] });
  expect(wishes([limits('a', 30, 60), bands('b', 4)])).toEqual({ bands: 4 });
});

test('limits taken back leave the number decided before', () => {
  const undo: Decision = { id: 'c', at: 0, kind: 'undo', undoes: 'b' };
  expect(wishes([bands('a', 5), limits('b', 30, 60), undo])).toEqual({ bands: 5 });
});

test('of her orders of ground and subject the last counts, until it is taken back; the reading is none the wiser', () => {
  const order = (id: string, of: PassagesChoice | null): Decision => ({
    id,
    at: 0,
    kind: 'passages',
    order: of,
  });
  const asked = (...decisions: Decision[]) => planWishes(decisions, emptyBox).passages;
  const [first, second] = [order('a', 'subject first'), order('b', 'together')];
  expect(asked()).toBeUndefined();
  expect(asked(first, second)).toBe('together');
  expect(asked(first, second, { id: 'c', at: 0, kind: 'undo', undoes: 'b' })).toBe('subject first');
  expect(planWishes([first, order('c', null)], emptyBox)).toEqual(planWishes([], emptyBox));
  expect(wishes([first])).toEqual({});
});

test('edits of families stand all, in order, until she drops them; what comes after stands again', () => {
  const edit = (id: string, part: readonly [number, number] | null): Decision => ({
    id,
    at: 0,
    kind: 'families',
    edit: part && { part },
  });
  const parts = (...decisions: Decision[]) => wishes(decisions).familyEdits;
  const [a, b, c] = [edit('a', [1, 1]), edit('b', [2, 2]), edit('c', [3, 3])];
  const drop = edit('d', null);
  const [first, second, third] = [{ part: [1, 1] }, { part: [2, 2] }, { part: [3, 3] }];
  expect(parts(a, b, c)).toEqual([first, second, third]);
  expect(parts(a, drop, b, c)).toEqual([second, third]);
  expect(parts(a, drop, b, edit('e', null), c)).toEqual([third]);
  expect(parts(a, b, drop)).toBeUndefined();
  expect(parts(a, b, drop, { id: 'u', at: 0, kind: 'undo', undoes: 'd' })).toEqual([first, second]);
});
