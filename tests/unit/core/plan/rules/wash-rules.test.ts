import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import type { BrokenRule } from '../../../../../app/core/plan/rules/broken-rule.ts';
import {
  accentsLate,
  bigBeforeSmall,
  fewWashes,
  lightBeforeDark,
  nothingLightens,
  washesForValues,
} from '../../../../../app/core/plan/rules/wash-rules.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { ruledPlan } from '../../../../support/plan/ruled-plan.ts';

const limits = { washes: 2, puddlesPerWash: 3 };
const at = (found: readonly BrokenRule[]): string[] => found.map(({ step }) => step);
const grey = (lightness: number): Lab => [lightness, 0, 0];

describe('the lighter wash before the darker one (R2)', () => {
  const mixes = [
    { id: '1/1', wash: 1, family: 1 },
    { id: '2/1', wash: 2, family: 1 },
    { id: '1/2', wash: 1, family: 2 },
    { id: '3/1', wash: 3, family: 1 },
  ];
  const slots = [{ family: 1 }, { family: 2 }, { family: 1, passage: 'subject' }];
  const late = (...steps: { mixes: string[]; slots: number[] }[]) =>
    at(
      lightBeforeDark(
        ruledPlan(
          steps.map((step, i) => ({ key: `wash/sheet/${i}`, ...step })),
          slots,
          mixes,
        ),
        limits,
      ),
    );

  test.each([
    [
      'in order',
      [
        { mixes: ['1/1'], slots: [0] },
        { mixes: ['2/1'], slots: [0] },
      ],
      [],
    ],
    [
      'turned round',
      [
        { mixes: ['2/1'], slots: [0] },
        { mixes: ['1/1'], slots: [0] },
      ],
      ['wash/sheet/1'],
    ],
    [
      'the same wash in two goes',
      [
        { mixes: ['1/1'], slots: [0] },
        { mixes: ['1/1'], slots: [0] },
      ],
      [],
    ],
    [
      'on other shapes',
      [
        { mixes: ['2/1'], slots: [0] },
        { mixes: ['1/2'], slots: [1] },
      ],
      [],
    ],
    [
      'of another family on the same shape',
      [
        { mixes: ['2/1'], slots: [0] },
        { mixes: ['1/2'], slots: [0] },
      ],
      [],
    ],
    [
      'of another passage',
      [
        { mixes: ['2/1'], slots: [2] },
        { mixes: ['1/1'], slots: [2] },
      ],
      [],
    ],
    [
      'both in one go, then the light one',
      [
        { mixes: ['1/1', '3/1'], slots: [0] },
        { mixes: ['2/1'], slots: [0] },
      ],
      ['wash/sheet/1'],
    ],
  ])('%s', (_, steps, wanted) => expect(late(...steps)).toEqual(wanted));
});

describe('nothing lightens (R2)', () => {
  const lightens = (...afters: Lab[][]) =>
    nothingLightens(
      ruledPlan(
        afters.map((after, i) => ({ key: `wash/sheet/${i}`, after })),
        [{}, {}],
      ),
      limits,
    ).map(({ what }) => what);

  test.each([
    [
      'darker each time',
      [
        [grey(80), grey(70)],
        [grey(80), grey(50)],
      ],
      [],
    ],
    ['lighter than the paper', [[grey(80), grey(95.1)]], ['wash/sheet/0 lightens slot 1']],
    ['as light as the paper', [[grey(95), grey(70)]], []],
    [
      'lighter than before',
      [
        [grey(80), grey(70)],
        [grey(80.1), grey(70)],
      ],
      ['wash/sheet/1 lightens slot 0'],
    ],
    ['by what rounding does', [[grey(80)], [grey(80 + 1e-7)]], []],
    ['a shape that was not there before', [[grey(80)], [grey(80), grey(99)]], []],
  ])('%s', (_, afters, wanted) => expect(lightens(...(afters as Lab[][]))).toEqual(wanted));
});

describe('big before small (R3)', () => {
  const slots = [{ share: 0.5 }, { share: 0.3 }, { share: 0.2 }];
  const late = (...steps: [key: string, slots: number[]][]) =>
    at(
      bigBeforeSmall(
        ruledPlan(
          steps.map(([key, own]) => ({ key, slots: own })),
          slots,
        ),
        limits,
      ),
    );

  test.each<[string, [string, number[]][], string[]]>([
    [
      'smaller each time',
      [
        ['wash/sheet/1', [0, 1, 2]],
        ['wash/sheet/2', [1, 2]],
        ['wash/sheet/3', [2]],
      ],
      [],
    ],
    [
      'a larger one after',
      [
        ['wash/sheet/1', [1]],
        ['wash/sheet/2', [0]],
      ],
      ['wash/sheet/2'],
    ],
    [
      'as large',
      [
        ['wash/sheet/1', [1]],
        ['wash/sheet/2', [1]],
      ],
      [],
    ],
    [
      'larger than the smallest before',
      [
        ['wash/sheet/1', [0, 1]],
        ['wash/sheet/2', [2]],
        ['wash/sheet/3', [1]],
      ],
      ['wash/sheet/3'],
    ],
    [
      'of another passage',
      [
        ['wash/ground/1', [2]],
        ['wash/subject/1', [0]],
      ],
      [],
    ],
    // Both goes of the first wash are one area, shapes counted once.
    [
      'a wash in two goes',
      [
        ['wash/sheet/1/a', [2]],
        ['wash/sheet/1/b', [0]],
        ['wash/sheet/2', [0]],
      ],
      [],
    ],
    [
      'a wash in two goes over one shape',
      [
        ['wash/sheet/1/a', [2]],
        ['wash/sheet/1/b', [2]],
        ['wash/sheet/2', [1]],
      ],
      ['wash/sheet/2'],
    ],
  ])('%s', (_, steps, wanted) => expect(late(...steps)).toEqual(wanted));
});

test('accents come when no wash goes over them any more (R3)', () => {
  const late = (...steps: [key: string, slots: number[]][]) =>
    at(accentsLate(ruledPlan(steps.map(([key, slots]) => ({ key, slots }))), limits));
  expect(late(['wash/sheet/1', [0]], ['accents/sheet/0', [0]])).toEqual([]);
  expect(late(['accents/sheet/0', [0, 1]], ['wash/sheet/1', [1]])).toEqual(['accents/sheet/0']);
  expect(late(['accents/sheet/0', [0]], ['wash/sheet/1', [1]])).toEqual([]);
  expect(late(['splatter/sheet/0', [1]], ['wash/sheet/1', [1]])).toEqual([]);
});

test('no more washes over each other than the paper bears: two here (R9)', () => {
  const over = (...slots: number[][]) =>
    fewWashes(ruledPlan(slots.map((own, i) => ({ key: `wash/sheet/${i}`, slots: own }))), limits);
  expect(over([0, 1], [0], [1])).toEqual([]);
  const [found, ...others] = over([0, 1], [0, 1], [2, 1], [3]);
  expect(others).toEqual([]);
  expect(found).toMatchObject({ step: 'wash/sheet/2', what: '3 washes on 1' });
  expect(words(found?.sentence)).toMatch(
    /^This is layer 3 over the same shapes, and this paper bears 2:/,
  );
  expect(at(over([0], [0], [0], [0]))).toEqual(['wash/sheet/2', 'wash/sheet/3']);
});

test('no more washes than there are values, passage by passage (R19)', () => {
  const slots = [
    { band: 1, reserve: true },
    { band: 2 },
    { band: 3 },
    { band: 3, family: 2 },
    { band: 2, passage: 'subject' },
  ];
  const many = (...keys: string[]) =>
    washesForValues(
      ruledPlan(
        keys.map((key) => ({ key })),
        slots,
      ),
      limits,
    );
  expect(many('wash/sheet/1', 'wash/sheet/2', 'wash/subject/1')).toEqual([]);
  expect(many('wash/sheet/1/a', 'wash/sheet/1/b', 'wash/sheet/2')).toEqual([]);
  expect(many('wash/sheet/1', 'wash/sheet/2', 'wash/sheet/3')).toMatchObject([
    { step: 'wash/sheet/3', what: '3 washes for 2 values' },
  ]);
  expect(at(many('wash/subject/1', 'wash/subject/2'))).toEqual(['wash/subject/2']);
});
