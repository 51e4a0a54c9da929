import { expect, test } from 'vitest';
import type { Decision } from '../../../../app/model/painting.ts';
import { sheetOf } from '../../../../app/model/sheet.ts';
import { readingWishes } from '../../../../app/model/wishes.ts';

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
