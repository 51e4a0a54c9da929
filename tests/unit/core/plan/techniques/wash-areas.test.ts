import { expect, test } from 'vitest';
import { longestPrompt } from '../../../../../app/core/limits.ts';
import { mergeWashes, splitWash } from '../../../../../app/core/plan/edits/regroup-washes.ts';
import { orderWork } from '../../../../../app/core/plan/order-steps.ts';
import type { WashWork } from '../../../../../app/core/plan/steps/draft-steps.ts';
import { draftSteps } from '../../../../../app/core/plan/steps/draft-steps.ts';
import { wayOfWash } from '../../../../../app/core/plan/techniques/wash-areas.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import {
  border,
  liftingPaint,
  type MadeWork,
  madeFacts,
  sheet,
} from '../../../../support/plan/made-work.ts';

// A sky of one plain blue shape over broken green land, a little cloud shadow in the sky. The limits are this
// project's own (see wash-areas.ts).
const sheetMm2 = sheet.widthMm * sheet.heightMm;
const sky = {
  lightness: 70,
  band: 2,
  family: 3,
  share: 0.3,
  shapes: 1,
  largestMm2: 0.3 * sheetMm2,
  centre: [0.5, 0.15],
} as const;
const land = {
  lightness: 55,
  band: 3,
  family: 1,
  share: 0.6,
  shapes: 40,
  smallShapes: 10,
  largestMm2: 0.1 * sheetMm2,
} as const;
const shadow = { ...sky, lightness: 60, share: 0.02, largestMm2: 0.02 * sheetMm2 };
const made: MadeWork = {
  slots: [sky, land, shadow],
  // 820 mm round 31,890 mm2 of sky are 21 times its area; the land's 5000 mm round are 392 times its own.
  borders: [
    border(0, 1, { lengthMm: 420 }),
    border(0, 2, { lengthMm: 400, soft: 0.3 }),
    border(1, 1, { lengthMm: 4580 }),
  ],
  washes: { sheet: [[0, 1, 2], [1]] },
  paints: { 1: 'pbr7-burnt-sienna', 3: 'pbr7-burnt-sienna' },
};
const way = (work: MadeWork, wash: number) => {
  const facts = madeFacts(work);
  const washes = facts.passages[0]?.washes ?? [];
  const own = washes[wash - 1];
  if (!own) throw new Error('no such wash');
  return wayOfWash(facts, own, washes.slice(0, wash - 1));
};
const first = (work: MadeWork) => way(work, 1);
const second = (work: MadeWork) => way(work, 2);

test('a sky goes on wetted paper with what lies in it, broken land on dry paper after it', () => {
  expect(first(made)).toEqual({
    technique: 'wet on dry',
    areas: [
      { slots: [0, 2], technique: 'wet-in-wet' },
      { slots: [1], technique: 'wet on dry' },
    ],
  });
});

test('where most of it is smooth the step is a wet one', () => {
  const slots = [
    { ...sky, share: 0.7, largestMm2: 0.7 * sheetMm2 },
    { ...land, share: 0.2 },
  ];
  const mostly = first({
    ...made,
    slots,
    borders: made.borders?.filter(({ b }) => b !== 2) ?? [],
    washes: { sheet: [[0, 1]] },
  });
  expect(mostly.technique).toBe('wet-in-wet');
  expect(mostly.areas?.map(({ slots: own }) => own)).toEqual([[0], [1]]);
});

test.each([
  ['a small sky', { slots: [{ ...sky, share: 0.02, largestMm2: 0.02 * sheetMm2 }, land, shadow] }],
  [
    'a broken sky',
    { borders: [border(0, 1, { lengthMm: 1400 }), border(1, 1, { lengthMm: 4580 })] },
  ],
  [
    'a sky that runs into the land',
    {
      borders: [
        border(0, 1, { lengthMm: 420, soft: 0.4, lost: 0.2 }),
        border(1, 1, { lengthMm: 4580 }),
      ],
    },
  ],
])('%s is painted with the rest', (_, changed) => {
  expect(first({ ...made, ...changed }).areas).toBeUndefined();
});

test('where the borders of the rest are soft too, all of it is wetted', () => {
  const white = { ...land, lightness: 95, share: 0.08, reserve: true };
  const borders = (soft: number) => [
    border(0, 1, { lengthMm: 420 }),
    border(0, 2, { lengthMm: 400, soft: 0.9 }),
    border(1, 3, { lengthMm: 600, soft }),
    border(1, 1, { lengthMm: 3980 }),
  ];
  const slots = [sky, land, shadow, white];
  const washes = { sheet: [[0, 1]] };
  expect(first({ ...made, slots, washes, borders: borders(0.95) })).toEqual({
    technique: 'wet-in-wet',
  });
  expect(first({ ...made, slots, washes, borders: borders(0.3) }).areas).toHaveLength(2);
});

test('a shape of another colour in the sky, or hardly beside it, is not wetted with it', () => {
  const wetted = (work: MadeWork) => first(work).areas?.[0]?.slots;
  expect(wetted({ ...made, slots: [sky, land, { ...shadow, family: 2 }] })).toEqual([0]);
  const far = [...(made.borders ?? []), border(1, 2, { lengthMm: 601 })];
  expect(wetted({ ...made, borders: far })).toEqual([0]);
});

test('a later wash wets again what is soft all round, never a plain sky, nor over paint that lifts', () => {
  const washes = {
    sheet: [
      [0, 1, 2],
      [0, 1],
    ],
  };
  expect(second({ ...made, washes }).areas).toBeUndefined();
  const soft = [
    border(0, 2, { lengthMm: 800, soft: 0.9 }),
    border(0, 1, { lengthMm: 200 }),
    border(1, 1, { lengthMm: 4580 }),
  ];
  expect(second({ ...made, washes, borders: soft }).areas?.map(({ slots }) => slots)).toEqual([
    [0],
    [1],
  ]);
  const lifting = { 1: 'pbr7-burnt-sienna', 3: liftingPaint };
  expect(second({ ...made, washes, borders: soft, paints: lifting }).areas).toBeUndefined();
});

test('the step says which first, each area with its tools; it dries as slowly as its wettest part', () => {
  const { steps } = orderWork(madeFacts(made));
  const step = steps.find(({ key }) => key === 'wash/sheet/1');
  expect(words(step?.prompt)).toBe(
    'Wet only the blue at the top; at an even sheen lay in the colour. Then the rest on dry paper, a dry line between.',
  );
  expect(words(step?.prompt).length).toBeLessThanOrEqual(longestPrompt);
  expect(step?.areas?.map(({ name, paper }) => [words(name), paper])).toEqual([
    ['the blue at the top', 'shiny'],
    ['the rest', 'bone dry'],
  ]);
  expect(step?.areas?.every(({ brush, board }) => brush && board)).toBe(true);
  const dry = orderWork(madeFacts(made), [
    { kind: 'technique', key: 'wash/sheet/1', technique: 'wet on dry' },
  ]).steps.find(({ key }) => key === 'wash/sheet/1');
  expect(dry?.areas).toBeUndefined();
  expect(step?.dryMinutes[1]).toBeGreaterThan(dry?.dryMinutes[1] ?? Infinity);
});

test('in two goes the areas are painted one after the other; put together they are as planned', () => {
  const facts = madeFacts(made);
  const planned = draftSteps(facts).find((one): one is WashWork => one.kind === 'wash');
  if (!planned) throw new Error('no wash');
  const goes = splitWash(planned, facts.slots);
  expect(goes?.map(({ wash, technique, areas }) => [wash.slots, technique, areas])).toEqual([
    [[0, 2], 'wet-in-wet', undefined],
    [[1], 'wet on dry', undefined],
  ]);
  if (goes) expect(mergeWashes(...goes)).toEqual(planned);
});
