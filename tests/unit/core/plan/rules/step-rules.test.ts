import { describe, expect, test } from 'vitest';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import type { Check } from '../../../../../app/core/plan/rules/broken-rule.ts';
import {
  coolAfterDryer,
  fewPuddles,
  lightsLast,
  lookLast,
  passagesApart,
  preparedFirst,
  saidInFull,
  softenInside,
  splatterInTexture,
} from '../../../../../app/core/plan/rules/step-rules.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { ruledPlan } from '../../../../support/plan/ruled-plan.ts';

const limits = { washes: 3, puddlesPerWash: 2 };
const [prepare, first, second, dry, look] = [
  'prepare/sheet/0',
  'wash/sheet/1',
  'wash/sheet/2',
  'dry/sheet/1',
  'last-look/sheet/0',
];
const [unmask, lights, lift] = ['unmask/sheet/0', 'last-lights/sheet/0', 'lift/sheet/0'];

/** What a check finds in steps told by their keys: 'step: what'. */
const found = (check: Check, ...keys: string[]): string[] =>
  check(ruledPlan(keys.map((key) => ({ key }))), limits).map(
    ({ step, what }) => `${step}: ${what}`,
  );

test('what is got ready comes before the first wash', () => {
  expect(found(preparedFirst, prepare, first)).toEqual([]);
  expect(found(preparedFirst, prepare)).toEqual([]);
  expect(found(preparedFirst, first, prepare, 'transfer/sheet/0')).toEqual([
    `${prepare}: ${prepare} after a wash`,
    'transfer/sheet/0: transfer/sheet/0 after a wash',
  ]);
});

describe('one passage before the next (R18)', () => {
  const apart = (keys: readonly string[], silent = '') =>
    passagesApart(
      ruledPlan(keys.map((key) => ({ key, rules: key === silent ? [] : ['R18'] }))),
      limits,
    ).map(({ what }) => what);
  const [g1, g2, s1] = ['wash/ground/1', 'wash/ground/2', 'wash/subject/1'];

  test.each([
    ['one after the other', [g1, g2, s1], '', []],
    ['back to the first', [g1, s1, g2], '', [`${g2} goes back to a passage that was left`]],
    ['without a word of the line', [g1, s1], s1, [`${s1} says nothing of the line`]],
    ['a sheet of one passage has no line', [first, second], first, []],
  ])('%s', (_, keys, silent, wanted) => expect(apart(keys, silent)).toEqual(wanted));
});

describe('puddles', () => {
  const parts = (...amounts: number[]) => amounts.map((n, i) => ({ paint: `p${i}`, parts: n }));
  const of = (mixes: Parameters<typeof ruledPlan>[2], own = ['a', 'b', 'c']) =>
    fewPuddles(ruledPlan([{ key: first, mixes: own }], [], mixes), limits).map(({ what }) => what);

  test('two in one wash here, of three paints and eight parts at most', () => {
    const mixes = [
      { id: 'a', wash: 1, puddle: 'A', parts: parts(4, 3, 1) },
      { id: 'b', wash: 1, puddle: 'B' },
    ];
    expect(of(mixes)).toEqual([]);
    expect(of([...mixes, { id: 'c', wash: 1, puddle: 'B' }])).toEqual([]);
    expect(of([...mixes, { id: 'c', wash: 1, puddle: 'C' }])).toEqual([`3 in ${first}`]);
    expect(of([...mixes, { id: 'c', wash: 1, puddle: 'C' }], ['a', 'c'])).toEqual([]);
  });

  test.each([
    [parts(5, 4), 'So many parts'],
    [parts(1, 1, 1, 1), 'More than three paints'],
  ])('%j', (mix, sentence) => {
    const [one] = fewPuddles(
      ruledPlan([{ key: first, mixes: ['a'] }], [], [{ id: 'a', wash: 1, parts: mix }]),
      limits,
    );
    expect(one?.what).toBe('mix a: too many paints or parts');
    expect(words(one?.sentence)).toMatch(new RegExp(`^${sentence}`));
  });
});

test('splatter on broken shapes only: two small ones at least (R21)', () => {
  const plain = (slots: number[]) =>
    splatterInTexture(
      ruledPlan([{ key: 'splatter/sheet/0', slots }], [{ smallShapes: 2 }, { smallShapes: 1 }]),
      limits,
    ).length;
  expect([plain([0]), plain([1]), plain([0, 1]), plain([9])]).toEqual([0, 1, 1, 1]);
});

describe('what comes last', () => {
  const blade: Partial<Step> = { technique: 'scraping', cautions: [{ say: 'caution/blade' }] };
  const last = (...keys: string[]) =>
    lightsLast(ruledPlan(keys.map((key) => ({ key, ...(key === lights && blade) }))), limits).map(
      ({ step }) => step,
    );

  test('opaque white and the blade (R13)', () => {
    expect(last(first, lights, look)).toEqual([]);
    expect(last(first)).toEqual([]);
    expect(last(lights, first, dry, unmask, look)).toEqual([first, unmask]);
    expect(found(lightsLast, first, lights)).toEqual([]); // opaque white alone
    const silent = ruledPlan([{ key: lights, technique: 'scraping' }]);
    expect(lightsLast(silent, limits)).toMatchObject([{ what: 'nothing said of the blade' }]);
  });

  test('the last look (R19)', () => {
    expect(found(lookLast, first, lights, look)).toEqual([]);
    expect(found(lookLast, look, dry)).toEqual([]);
    expect(found(lookLast, look, dry, lights, first)).toEqual([
      `${look}: ${lights} after the last look`,
    ]);
    expect(found(lookLast, look, lift)).toEqual([`${look}: ${lift} after the last look`]);
  });
});

describe('said in full', () => {
  const whole = { prompt: 'Lay it.', watch: 'The bead.', bands: [2], mixes: ['a'] };
  const mixes = [
    { id: 'a', wash: 1 },
    { id: 'empty', wash: 1, parts: [] },
  ];
  const missing = (...steps: (Partial<Step> & { key: string })[]) =>
    saidInFull(
      ruledPlan(
        steps.map((step) => ({ ...whole, ...step })),
        [],
        mixes,
      ),
      limits,
    ).map(({ what }) => what);

  test.each<[string, Partial<Step>, string[]]>([
    ['all of it', {}, []],
    ['no prompt', { prompt: '' }, [`prompt of ${first}`]],
    ['a prompt of 160 signs', { prompt: 'x'.repeat(160) }, []],
    ['of 161', { prompt: 'x'.repeat(161) }, [`prompt of ${first}`]],
    ['no band', { bands: [] }, [`${first} has no band or no mix`]],
    ['no mix', { mixes: [] }, [`${first} has no band or no mix`]],
    ['nothing to watch', { watch: '' }, [`${first} says no watch`]],
    ['a mix that is not there', { mixes: ['a', 'b'] }, ['b is missing']],
    ['a mix of nothing', { mixes: ['empty'] }, ['empty is missing']],
    ['out of order', { n: 2 }, [`${first} is number 2`]],
  ])('a wash with %s', (_, changed, wanted) =>
    expect(missing({ key: first, ...changed })).toEqual(wanted),
  );

  test('other steps need no band, mix or watch; no key comes twice', () => {
    expect(missing({ key: look, bands: [], mixes: [], watch: '' })).toEqual([]);
    expect(missing({ key: first }, { key: first })).toEqual([`twice ${first}`]);
  });
});

test('a drying check tells her to let the sheet cool after the dryer (R14)', () => {
  const cool = (...cautions: string[]) =>
    coolAfterDryer(ruledPlan([{ key: dry, cautions }]), { ...limits, hairDryer: true }).length;
  expect(coolAfterDryer(ruledPlan([{ key: dry }]), limits)).toEqual([]); // no dryer, no word of it
  expect(cool('No hair dryer yet.')).toBe(0);
  expect([cool('Hair DRYER last, then let it cool.'), cool('Let it cool.'), cool()]).toEqual([
    0, 1, 1,
  ]);
  expect(found(coolAfterDryer, first)).toEqual([]);
});

test('strokes are softened in a wash or where a mask came off (R8, R17)', () => {
  const soft = (key: string) =>
    softenInside(ruledPlan([{ key, soften: 'the roof' }]), limits).length;
  expect([soft(first), soft(unmask), soft(lift)]).toEqual([0, 0, 1]);
  expect(found(softenInside, lift)).toEqual([]);
});
