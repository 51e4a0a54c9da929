import { expect, test } from 'vitest';
import {
  hasRoom,
  justThese,
  letBe,
  ofSize,
  searchedFreely,
  withoutPaint,
  withPaint,
} from '../../../../app/model/palette-moves.ts';
import type { PaletteWish } from '../../../../app/model/wishes.ts';

const free: PaletteWish = { n: 3, must: ['red'], exclude: ['green'] };
const chosen: PaletteWish = { ...free, chosen: ['red', 'blue'] };

test.each<[string, PaletteWish, PaletteWish]>([
  ['asked of the search', withPaint(free, 'blue'), { ...free, must: ['red', 'blue'] }],
  [
    'asked for, though left out',
    withPaint(free, 'green'),
    { n: 3, must: ['red', 'green'], exclude: [] },
  ],
  [
    'added to her choice',
    withPaint(chosen, 'ochre'),
    { ...chosen, chosen: ['red', 'blue', 'ochre'] },
  ],
  ['asked for twice', withPaint(free, 'red'), free],
  ['never searched for', withoutPaint(free, 'red'), { n: 3, must: [], exclude: ['green', 'red'] }],
  ['taken from her choice', withoutPaint(chosen, 'blue'), { ...chosen, chosen: ['red'] }],
  [
    'the last of her choice: searched again, without it',
    withoutPaint({ ...free, chosen: ['red'] }, 'red'),
    { n: 3, must: [], exclude: ['green', 'red'] },
  ],
  ['let be', letBe(free, 'green'), { ...free, exclude: [] }],
  ['just these', justThese(free, ['a', 'b']), { ...free, chosen: ['a', 'b'] }],
  ['freely again', searchedFreely(chosen), free],
  ['another size is a search', ofSize(chosen, 5), { ...free, n: 5 }],
  [
    'not under what she asked for',
    ofSize({ ...free, must: ['a', 'b'] }, 1),
    { ...free, must: ['a', 'b'], n: 2 },
  ],
  ['at most seven', ofSize(free, 9), { ...free, n: 7 }],
])('%s', (_, wish, expected) => {
  expect(wish).toEqual(expected);
});

test('room for one more', () => {
  expect(hasRoom(free)).toBe(true);
  expect(hasRoom({ ...free, n: 1 })).toBe(false);
  expect(hasRoom({ ...free, n: 1, chosen: ['a', 'b'] })).toBe(true);
  expect(hasRoom({ ...free, chosen: [...'abcdefg'] })).toBe(false);
});
