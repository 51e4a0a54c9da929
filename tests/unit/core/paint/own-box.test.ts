import { expect, test } from 'vitest';
import { boxWishes, planWishes } from '../../../../app/core/decisions/wishes.ts';
import {
  boxInWords,
  emptyBox,
  isOwned,
  ownPaints,
  paintsTakenOut,
  putBack,
  takenOut,
  tickedPaints,
  withOwnPaint,
  withTick,
  withTicks,
} from '../../../../app/core/paint/own-box.ts';
import { nothingKnown } from '../../../../app/core/paint/paint-traits.ts';

const spectrum = new Array<number>(36).fill(1);
const mine = {
  id: 'own-1',
  name: 'mine',
  ci: ['PB29'],
  K: spectrum,
  S: spectrum,
  properties: nothingKnown,
};

test('until anything is ticked, and after the last tick is taken back, every paint counts', () => {
  expect(boxWishes(emptyBox)).toEqual({});
  expect(isOwned(emptyBox, 'a')).toBe(true);
  const one = withTick(emptyBox, 'a', true);
  expect(boxWishes(one)).toEqual({ box: ['a'] });
  expect([isOwned(one, 'a'), isOwned(one, 'b')]).toEqual([true, false]);
  expect(withTick(one, 'a', false)).toEqual(emptyBox);
  expect(tickedPaints(withTicks(one, []))).toBeNull();
  expect(tickedPaints(withTicks(one, ['a', 'b']))).toEqual(['a', 'b']);
  expect(tickedPaints(withTick(one, 'a', true))).toEqual(['a']);
});

test('a paint of hers is one more revision; the last counts', () => {
  const box = withOwnPaint(withOwnPaint(emptyBox, mine), { ...mine, name: 'mine, better' });
  expect(box.paints.map(({ revision, name }) => [revision, name])).toEqual([
    [1, 'mine'],
    [2, 'mine, better'],
  ]);
  expect(ownPaints(box)).toHaveLength(1);
  expect(boxWishes(box).ownPaints?.[0]?.name).toBe('mine, better');
});

test('where ticks count a new paint of hers is ticked, a changed one is left as it is', () => {
  expect(withOwnPaint(emptyBox, mine).owned).toBeNull();
  const ticked = withOwnPaint(withTick(emptyBox, 'a', true), mine);
  expect(ticked.owned).toEqual(['a', 'own-1']);
  const unticked = withTick(ticked, 'own-1', false);
  expect(withOwnPaint(unticked, mine).owned).toEqual(['a']);
});

test('a paint taken out is out of the plan, its tick with it, until it is put back', () => {
  const box = withTicks(withOwnPaint(emptyBox, mine), ['own-1']);
  const out = takenOut(box, 'own-1');
  expect(boxWishes(out)).toEqual({}); // no other was ticked: every paint counts
  expect([ownPaints(out), paintsTakenOut(out).length]).toEqual([[], 1]);
  expect(boxWishes(putBack(out, 'own-1'))).toEqual(boxWishes(box));
});

test('a plan that wanted a paint taken out since goes on without it', () => {
  const palette = { kind: 'palette', n: 3, must: ['own-1', 'a'], exclude: ['own-1'] } as const;
  const decisions = [{ id: '1', at: 1, ...palette, chosen: ['own-1', 'b'] }];
  const box = withOwnPaint(emptyBox, mine);
  expect(planWishes(decisions, box)).toMatchObject({
    must: ['own-1', 'a'],
    chosen: ['own-1', 'b'],
  });
  expect(planWishes(decisions, takenOut(box, 'own-1'))).toMatchObject({
    must: ['a'],
    exclude: [],
    chosen: ['b'],
  });
});

test('what the ticks mean is said', () => {
  expect(boxInWords(null, 33)).toBe('Nothing is ticked yet: all 33 paints count as yours.');
  expect(boxInWords(1, 33)).toMatch(/values only/);
  expect(boxInWords(12, 33)).toMatch(/^12 of 33/);
});
