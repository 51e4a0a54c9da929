import { expect, test } from 'vitest';
import { emptyBox } from '../../../../app/model/own-box.ts';
import type { Decision } from '../../../../app/model/painting.ts';
import type { PassagesChoice } from '../../../../app/model/passages-choice.ts';
import { sheetOf } from '../../../../app/model/sheet.ts';
import { planWishes, readingWishes } from '../../../../app/model/wishes.ts';

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
