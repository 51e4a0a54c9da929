import { describe, expect, test } from 'vitest';
import type { Paint } from '../../../../../app/core/paint/paint.ts';
import type { Step } from '../../../../../app/core/plan/plan.ts';
import {
  dryBeforeNext,
  edgesByTechnique,
  liftWhatLifts,
  paperAsPainted,
  thinGlaze,
  valuesInSeparateWashes,
  wetAgain,
} from '../../../../../app/core/plan/rules/wetness-rules.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { border } from '../../../../support/plan/made-work.ts';
import { ruledPlan } from '../../../../support/plan/ruled-plan.ts';

const limits = { washes: 3, puddlesPerWash: 3 };
const [first, second, dry, lift, look] = [
  'wash/sheet/1',
  'wash/sheet/2',
  'dry/sheet/1',
  'lift/sheet/0',
  'last-look/sheet/0',
];
const wet: Partial<Step> = { dryMinutes: [20, 60] };

describe('nothing is done on a sheet that has not dried (R5, R7)', () => {
  const told = (keys: readonly string[], loads: readonly [number, number] = [1, 1]) =>
    dryBeforeNext(
      ruledPlan(
        keys.map((key) => ({
          key,
          ...(/^(wash|lift)/.test(key) && wet),
          mixes: key === first ? ['a'] : key === second ? ['b'] : [],
        })),
        [],
        [
          { id: 'a', wash: 1, load: loads[0] },
          { id: 'b', wash: 2, load: loads[1] },
        ],
      ),
      limits,
    ).map(({ step, sentence }) => [step, words(sentence).slice(0, 22)]);

  test.each([
    ['dried between', [first, dry, second, dry, lift, dry, look], []],
    ['a wash into a wash', [first, second], [[second, 'It goes into a wash th']]],
    ['lifted from a wet sheet', [first, lift, dry], [[lift, 'The sheet is still dam']]],
    ['looked at wet', [first, look], [[look, 'Wet paint looks darker']]],
    ['the last one may stay wet', [first], []],
  ])('%s', (_, keys, wanted) => expect(told(keys)).toEqual(wanted));

  test('a thinner wash pushes a thicker one away; an equal one runs into it', () => {
    expect(told([first, second], [2, 1])).toEqual([[second, 'Thin paint goes into a']]);
    expect(told([first, second], [2, 2])).toEqual([[second, 'It goes into a wash th']]);
  });
});

test.each<[Partial<Step>, string | null]>([
  [{ technique: 'wet on dry', paper: 'bone dry' }, null],
  [{ technique: 'wet-in-wet', paper: 'shiny' }, null],
  [{ technique: 'wet-in-wet', paper: 'satin' }, null],
  [{ technique: 'wet-in-wet', paper: 'bone dry' }, 'On dry paper the colours do not run'],
  [{ technique: 'glaze', paper: 'satin' }, 'On wet paper this paint spreads'],
  [{ technique: 'wet on dry', paper: 'damp' }, 'On damp paper paint runs unevenly'],
])('a wash %j (R5)', (step, sentence) => {
  const [found] = paperAsPainted(ruledPlan([{ key: first, ...step }]), limits);
  expect(found ? words(found.sentence).startsWith(sentence ?? '?') : null).toBe(
    sentence === null ? null : true,
  );
});

test('damp paper is no matter where nothing is washed', () => {
  expect(
    paperAsPainted(ruledPlan([{ key: lift, technique: 'lifting', paper: 'damp' }]), limits),
  ).toEqual([]);
});

test('two washes of a family in one go run into each other, a thinner second one pushes the first away (R5)', () => {
  const told = (...rows: { wash: number; family?: number; load?: number; passage?: string }[]) => {
    const mixes = rows.map((row, i) => ({ id: `m${i}`, ...row }));
    const plan = ruledPlan([{ key: first, mixes: mixes.map(({ id }) => id) }], [], mixes);
    return valuesInSeparateWashes(plan, limits).map(({ sentence }) => words(sentence).slice(0, 36));
  };
  expect(told({ wash: 1 }, { wash: 1, family: 2 })).toEqual([]);
  expect(told({ wash: 1 }, { wash: 1, passage: 'subject' })).toEqual([]);
  expect(told({ wash: 1, load: 1 }, { wash: 2, load: 1 })).toEqual([
    'In one go the darker colours run int',
  ]);
  expect(told({ wash: 1, load: 2 }, { wash: 2, load: 1 })).toEqual([
    'In one go the second colour is the w',
  ]);
});

describe('wet paper for soft edges, dry paper for hard ones', () => {
  const told = (technique: Step['technique'], soft: number, key = first, before: string[] = []) =>
    edgesByTechnique(
      ruledPlan([
        ...before.map((each) => ({ key: each, technique: 'glaze' as const })),
        { key, technique, slots: [1] },
      ]),
      { ...limits, borders: [border(0, 1, { soft })] },
    ).length;

  test.each([
    ['wet-in-wet', 0.34, 1],
    ['wet-in-wet', 0.35, 0],
    ['wet on dry', 0.65, 0],
    ['wet on dry', 0.66, 1],
  ] as const)('%s, %f of its outline soft', (technique, soft, count) =>
    expect(told(technique, soft)).toBe(count),
  );

  test('a later wash on dry paper softens its strokes one by one; each passage has a first', () => {
    expect(told('wet on dry', 0.9, second, [first])).toBe(0);
    expect(told('wet on dry', 0.9, 'wash/subject/1', [first])).toBe(1);
  });

  test('nothing is said where there are no borders to look at', () => {
    expect(
      edgesByTechnique(ruledPlan([{ key: first, technique: 'wet-in-wet', slots: [1] }]), limits),
    ).toEqual([]);
    const none = { ...limits, borders: [border(0, 1, { soft: 0, lengthMm: 0 })] };
    expect(
      edgesByTechnique(ruledPlan([{ key: first, technique: 'wet-in-wet', slots: [1] }]), none),
    ).toEqual([]);
  });
});

// A load of a thousandth is a tint in any unit, one of a thousand stiffer than any paint.
test('a glaze is thin (R10)', () => {
  const thick = (load: number, technique: Step['technique'] = 'glaze') =>
    thinGlaze(
      ruledPlan(
        [{ key: first, technique, mixes: ['a'] }],
        [],
        [
          { id: 'a', wash: 1, load },
          { id: 'b', wash: 1, load: 5000 },
        ],
      ),
      limits,
    ).length;
  expect([thick(0.001), thick(1000)]).toEqual([0, 1]);
  expect(thick(1000, 'wet on dry')).toBe(0);
});

describe('paint that lifts', () => {
  const paint = (id: string, staining: number | null) =>
    ({ id, properties: { staining } }) as unknown as Paint;
  const optics = [paint('lifts', 0), paint('stains', 2), paint('unknown', null)];
  const plan = (names: readonly string[], ...steps: (Partial<Step> & { key: string })[]) => ({
    ...ruledPlan(
      [{ key: first, slots: [0], mixes: ['a'] }, ...steps],
      [{ family: 1 }, { family: 1 }],
      [{ id: 'a', wash: 1, parts: names.map((name) => ({ paint: name, parts: 1 })) }],
    ),
    optics: optics as never,
  });

  test.each([
    [['lifts'], [0], []],
    [['lifts', 'stains'], [0], ['Staining paint lies here']],
    [['unknown'], [0], ['Staining paint lies here']],
    [['lifts'], [1], ['There is no paint to lif']],
  ])('of %j on slot %j (R11)', (names, slots, wanted) => {
    const found = liftWhatLifts(plan(names, { key: lift, slots }), limits);
    expect(found.map(({ sentence }) => words(sentence).slice(0, 24))).toEqual(
      wanted.map((text) => text.slice(0, 24)),
    );
  });

  test('a wash over what was lifted closes it again (R17)', () => {
    const closed = (slots: number[]) =>
      liftWhatLifts(plan(['lifts'], { key: lift, slots: [0] }, { key: second, slots }), limits).map(
        ({ rule }) => rule,
      );
    expect([closed([0]), closed([1])]).toEqual([['R17'], []]);
  });

  test('is not wetted again (R16)', () => {
    const again = (
      names: readonly string[],
      technique: Step['technique'] = 'wet-in-wet',
      slots = [0],
    ) => wetAgain(plan(names, { key: second, technique, slots }), limits).length;
    expect([
      again(['lifts']),
      again(['stains', 'lifts']),
      again(['stains']),
      again(['unknown']),
    ]).toEqual([1, 1, 0, 0]);
    expect([again(['lifts'], 'wet on dry'), again(['lifts'], 'wet-in-wet', [1])]).toEqual([0, 0]);
  });
});
