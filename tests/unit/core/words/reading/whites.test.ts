import { expect, test } from 'vitest';
import type { White, WhiteWay } from '../../../../../app/core/reading/whites/whites.ts';
import {
  countsInWords,
  whiteInWords,
  whitesSentence,
} from '../../../../../app/core/words/reading/whites.ts';
import { maxRows, shownRows } from '../../../../../app/screens/whites/use-whites.ts';

const white = (shortSideMm: number, way: WhiteWay = 'round', byHand = false): White => ({
  at: [0.5, 0.5],
  slot: 0,
  areaMm2: shortSideMm ** 2,
  shortSideMm,
  softShare: 0,
  byHand,
  way,
  why: '',
});

// Sizes and shares (own).
test('size, share of the sheet, and whose it is', () => {
  const sheet = { widthMm: 100, heightMm: 100 };
  expect(whiteInWords(white(20), sheet)).toBe('20 mm across, 4.0 % of the sheet');
  expect(whiteInWords(white(2, 'mask', true), sheet)).toBe(
    '2 mm across, less than 0.1 % of the sheet, yours',
  );
  expect(whiteInWords(white(31.6), sheet)).toContain('10 % of');
});

test('all of them in a sentence', () => {
  expect(whitesSentence([], 0)).toMatch(/^No white .*Keep white, brush/);
  expect(whitesSentence([white(20)], 0.123)).toBe('One white: 12 % of the sheet stays paper.');
  const several = [white(20), white(2, 'mask'), white(0.7, 'last')];
  expect(whitesSentence(several, 0.05)).toContain('3 whites, 2 of them small: 5.0 %');
  expect(countsInWords(several)).toBe('paint round 1, mask 1, bring back at the end 1');
  expect(countsInWords([white(20), white(9)])).toBe('paint round 2');
  expect(countsInWords([])).toBe('');
});

test('rows: the largest first, all on request, and always the one in hand', () => {
  const whites = [...Array.from({ length: 20 }, () => white(9)), white(2), white(1)];
  expect(shownRows(whites, -1, false)).toEqual(Array.from({ length: maxRows }, (_, i) => i));
  expect(shownRows(whites, -1, true)).toHaveLength(20);
  expect(shownRows(whites, 21, false).at(-1)).toBe(21);
  expect(shownRows(whites, 15, false).at(-1)).toBe(15);
  expect(shownRows(whites, 3, false)).toHaveLength(maxRows);
  expect(shownRows(whites, 40, false)).toHaveLength(maxRows); // of a reading before
});
