import { expect, test } from 'vitest';
import { boxWishes, planWishes } from '../../../../app/core/decisions/wishes.ts';
import {
  emptyBox,
  isOwned,
  type OwnBox,
  ownPaints,
  paintsTakenOut,
  putBack,
  takenOut,
  tickedPaints,
  withOwnPaint,
  withRenameSeen,
  withTick,
  withTicks,
} from '../../../../app/core/paint/own-box.ts';
import { nothingKnown } from '../../../../app/core/paint/paint-traits.ts';
import { boxInWords, madeFromInWords } from '../../../../app/core/words/paint/own-box.ts';

const spectrum = new Array<number>(36).fill(1);
const mine = {
  id: 'own-1',
  name: 'mine',
  ci: ['PB29'],
  K: spectrum,
  S: spectrum,
  properties: nothingKnown,
};

const usual = { id: 'u', provenance: 'recipe', placeAmongOwned: 3 } as const;
const seldom = { id: 's', provenance: 'recipe' } as const;
const hers = { id: 'own-1' };

test('until anything is ticked, and after the last tick is taken back, the usual paints and hers count', () => {
  expect(boxWishes(emptyBox)).toEqual({});
  expect([usual, seldom, hers].map((each) => isOwned(emptyBox, each))).toEqual([true, false, true]);
  const one = withTick(emptyBox, 'a', true);
  expect(boxWishes(one)).toEqual({ box: ['a'] });
  expect([isOwned(one, { id: 'a' }), isOwned(one, { id: 'b' })]).toEqual([true, false]);
  expect([usual, seldom, hers].some((each) => isOwned(one, each))).toBe(false);
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
  expect(boxWishes(out)).toEqual({}); // no other was ticked: as if none was
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
  const cards = [usual, { ...usual, id: 'v' }, seldom];
  const said = (...ids: string[]) => boxInWords(withTicks(emptyBox, ids), cards);
  expect(said()).toBe('Nothing ticked yet: plans choose from the 2 paints most painters own.');
  expect(boxInWords(emptyBox, [...cards, hers])).toBe(
    'Nothing ticked yet: plans choose from the 2 paints most painters own and the paint of your own.',
  );
  expect(said('u')).toMatch(/values only/);
  expect(said('u', 'v', 's')).toMatch(/^3 paints ticked/);
  expect(boxInWords({ ...withTicks(emptyBox, ['own-1']), gone: ['own-1'] }, cards)).toMatch(
    /^Nothing ticked/,
  );
});

test('a plan says whose paints it was made from', () => {
  const from = (box: OwnBox) => madeFromInWords(box);
  expect(from(emptyBox)).toBe('Made from the paints most painters own.');
  expect(from(withOwnPaint(emptyBox, mine))).toBe(
    'Made from the paints most painters own, and your own.',
  );
  expect(from(withTicks(emptyBox, ['u']))).toBe('Made from your own paint.');
  expect(from(withTicks(emptyBox, ['u', 'v', 's']))).toBe('Made from your own 3 paints.');
});

test('a paint that is called otherwise now is told until she has seen it', () => {
  const box = { ...emptyBox, renamed: ['a', 'b'] };
  const once = withRenameSeen(box, 'a');
  expect(once.renamed).toEqual(['b']);
  expect(withRenameSeen(once, 'b')).toEqual(emptyBox);
});
