import { describe, expect, test } from 'vitest';
import type { SlotSlope } from '../../../../../app/core/reading/slot.ts';
import {
  border,
  type MadeSlot,
  madeFacts,
  stepOf,
  techniquesOf,
  touchOf,
} from '../../../../support/plan/made-work.ts';
import { uprightEdge } from '../../../../support/reading/made-edge.ts';

// What calls for which technique: R5, R6, R11, R13, R20, R21 in app/core/plan/rules/rules.md; common practice, no
// source for the figures.

const sky: MadeSlot = { lightness: 70, family: 3, share: 0.4, largestMm2: 40_000 };
const land: MadeSlot = { lightness: 50, family: 1, share: 0.4, largestMm2: 40_000 };
const slope = (given: Partial<SlotSlope> = {}): SlotSlope => ({
  lightness: 14,
  towards: 'top',
  fit: 0.8,
  ...given,
});
const broken = { shapes: 90, smallShapes: 70, largestMm2: 900 };

test('a plain picture calls for nothing', () => {
  const facts = madeFacts({
    slots: [sky, land],
    borders: [border(0, 1)],
    washes: { sheet: [[0, 1], [1]] },
  });
  expect(stepOf(facts).touches).toBeUndefined();
  expect(stepOf(facts, 2).touches).toBeUndefined();
  expect(stepOf(facts, 1, 'wet-in-wet').touches).toBeUndefined();
});

describe('graded wash', () => {
  const step = (slot: Partial<MadeSlot>, technique: 'wet on dry' | 'wet-in-wet' = 'wet on dry') =>
    stepOf(
      madeFacts({ slots: [{ ...sky, ...slot }, land], washes: { sheet: [[0, 1]] } }),
      1,
      technique,
    );

  test('a large shape that slopes: which side is strong, and how the board lies', () => {
    const dry = step({ slope: slope() });
    expect(touchOf(dry, 'graded wash')).toMatchObject({
      paper: 'bone dry',
      minutes: [0, dry.shineMinutes[1]],
    });
    expect(touchOf(dry, 'graded wash').text).toMatch(/blue strong at the top.*thin at the bottom/);
    expect(dry.board).toMatch(/20°, the top edge raised/);
    const wet = step({ slope: slope({ towards: 'lower left' }) }, 'wet-in-wet');
    expect(touchOf(wet, 'graded wash').paper).toBe('shiny');
    expect(touchOf(wet, 'graded wash').text).toMatch(/strong lower left, thin upper right/);
    expect(wet.board).toMatch(/flat while you wet it; then the lower left corner raised/);
  });

  test('not a slight slope, one no plane explains, a small shape, an older reading', () => {
    for (const other of [
      { slope: slope({ lightness: 5 }) },
      { slope: slope({ fit: 0.2 }) },
      { slope: slope(), largestMm2: 3000 },
      {},
    ]) {
      expect(step(other).touches).toBeUndefined();
      expect(step(other).board).not.toContain('raised');
    }
  });

  test('two values of one colour that run into each other: from the darker side, said once', () => {
    const pair = (soft: number, lost: number) =>
      stepOf(
        madeFacts({
          slots: [
            { ...sky, centre: [0.5, 0.2] },
            { ...sky, band: 3, lightness: 60, centre: [0.5, 0.7] },
          ],
          borders: [border(0, 1, { soft, lost })],
          washes: { sheet: [[0, 1]] },
        }),
      );
    expect(touchOf(pair(0.8, 0), 'graded wash').text).toMatch(/strong at the bottom/);
    expect(techniquesOf(pair(0.1, 0.8))).toEqual(['graded wash']);
    expect(techniquesOf(pair(0.2, 0))).toEqual([]);
  });

  test('only in the wash that finishes it', () => {
    const facts = madeFacts({
      slots: [{ ...sky, slope: slope() }, land],
      washes: { sheet: [[0, 1], [0]] },
    });
    expect(techniquesOf(stepOf(facts, 1))).toEqual([]);
    expect(techniquesOf(stepOf(facts, 2))).toEqual(['graded wash']);
  });
});

describe('merging', () => {
  const lostBorder = [border(0, 1, { lost: 0.8 })];

  test('a lost border whose sides are both in this wash; nowhere else', () => {
    const facts = madeFacts({
      slots: [sky, land],
      borders: lostBorder,
      washes: { sheet: [[0, 1], [1]] },
    });
    const first = stepOf(facts);
    expect(touchOf(first, 'merging')).toEqual({
      technique: 'merging',
      text: 'Let these merge, painted in one go: the blue and the dull green.',
      paper: 'shiny',
      minutes: [0, first.shineMinutes[1]],
    });
    expect(first.soften).toBe('');
    expect(techniquesOf(stepOf(facts, 2))).toEqual([]);
  });

  test('where she wants it lost, however much else is called for, with its place', () => {
    const facts = madeFacts({
      slots: [
        { ...sky, slope: slope() },
        { ...land, ...broken },
      ],
      borders: [border(0, 1, { soft: 0.9 })],
      edges: [uprightEdge(0.1, { a: 0, b: 1, wish: 'lose' })],
      washes: { sheet: [[0, 1]] },
    });
    expect(touchOf(stepOf(facts), 'merging').text).toMatch(
      /the blue and the dull green, on the left\./,
    );
  });
});

describe('charging', () => {
  const made = (soft: number, load: number, share = 0.05) =>
    madeFacts({
      slots: [land, { ...sky, family: 2, share, largestMm2: 5000 }],
      borders: [border(0, 1, { soft })],
      washes: { sheet: [[0, 1]] },
      loads: { 1: 1, 2: load },
    });

  test('a second colour that lies softly inside a larger shape', () => {
    const step = stepOf(made(0.9, 3));
    expect(touchOf(step, 'charging').text).toMatch(
      /^Drop the brown into the dull green while it shines/,
    );
    expect(touchOf(step, 'charging').minutes).toEqual([0, step.shineMinutes[1]]);
    expect(step.rules).toContain('R6');
  });

  test('not along a crisp border, not beside its like in size, not into a glaze', () => {
    expect(techniquesOf(stepOf(made(0.2, 3)))).toEqual([]);
    expect(techniquesOf(stepOf(made(0.9, 3, 0.39)))).toEqual([]);
    expect(techniquesOf(stepOf(made(0.9, 3), 1, 'glaze'))).toEqual([]);
  });

  test('never thinner than what is there: that runs back (R6)', () => {
    const thick = madeFacts({
      slots: [land, { ...sky, family: 2, share: 0.05, largestMm2: 5000 }],
      borders: [border(0, 1, { soft: 0.9 })],
      washes: { sheet: [[0, 1]] },
      loads: { 1: 8, 2: 1 },
    });
    expect(techniquesOf(stepOf(thick))).toEqual([]);
  });
});

describe('negative painting', () => {
  const light: MadeSlot = { lightness: 80, family: 4, band: 2, share: 0.05, largestMm2: 2000 };
  const dark: MadeSlot = { lightness: 40, family: 1, band: 3, share: 0.4, largestMm2: 20_000 };
  const made = (soft: number, rounds = 1, shape: Partial<MadeSlot> = {}) =>
    madeFacts({
      slots: [{ ...light, ...shape }, dark, sky],
      borders: [border(0, 1, { soft, lengthMm: 180 }), border(0, 2, { lengthMm: 20 })],
      washes: { sheet: [[0, 1, 2], ...Array.from({ length: rounds }, () => [1])] },
    });

  test('a crisp light shape most of whose way round is darker: the dark makes its edge', () => {
    const step = stepOf(made(0.1), 2);
    expect(touchOf(step, 'negative painting')).toMatchObject({ paper: 'bone dry', minutes: null });
    expect(touchOf(step, 'negative painting').text).toContain('round the ochre:');
    expect(step.rules).toContain('R20');
    expect(techniquesOf(stepOf(made(0.1), 1))).toEqual([]);
  });

  test('not round a soft shape, a scrap of texture, or on wet paper; at most three rounds', () => {
    expect(techniquesOf(stepOf(made(0.8), 2))).toEqual([]);
    expect(techniquesOf(stepOf(made(0.1, 1, { shapes: 9, smallShapes: 8 }), 2))).toEqual([]);
    expect(techniquesOf(stepOf(made(0.1), 2, 'wet-in-wet'))).toEqual([]);
    const five = made(0.1, 5);
    const rounds = [2, 3, 4, 5, 6].map((n) => techniquesOf(stepOf(five, n)).length);
    expect(rounds).toEqual([1, 1, 1, 0, 0]);
  });

  test('a dark ground after a lighter subject is cut round it', () => {
    const facts = (ground: number, subject: number) =>
      madeFacts({
        slots: [
          { ...land, passage: 'ground', lightness: ground },
          { ...sky, passage: 'subject', lightness: subject },
        ],
        borders: [border(0, 1)],
        washes: { ground: [[0]], subject: [[1]] },
      });
    const step = stepOf(facts(30, 80), 1, 'wet on dry', 'ground');
    expect(touchOf(step, 'negative painting').text).toContain('round the subject');
    expect(techniquesOf(stepOf(facts(80, 30), 1, 'wet on dry', 'ground'))).toEqual([]);
  });
});

test('at most three, those about most of the sheet, in the order they are done', () => {
  const facts = madeFacts({
    slots: [
      { ...sky, slope: slope() },
      { ...land, ...broken, share: 0.1 },
      { ...land, family: 4, share: 0.3 },
      { ...land, family: 2, share: 0.008, largestMm2: 800 },
    ],
    borders: [
      border(0, 2, { lost: 0.9 }),
      border(1, 2, { soft: 0.9, lengthMm: 100 }),
      border(3, 2, { soft: 0.9, lengthMm: 100 }),
    ],
    washes: { sheet: [[0, 1, 2, 3]] },
    loads: { 2: 3 },
  });
  expect(techniquesOf(stepOf(facts, 1, 'wet-in-wet'))).toEqual([
    'graded wash',
    'merging',
    'water drops',
  ]);
});

test('crisp edges of a wash on wet paper are kept from the water, and it says so', () => {
  const facts = madeFacts({
    slots: [land, { ...sky, reserve: true, lightness: 95 }],
    borders: [border(0, 1)],
    washes: { sheet: [[0]] },
  });
  expect(stepOf(facts, 1, 'wet-in-wet').soften).toBe(
    'These edges stay crisp, so stop the water short of them: the dull green against the white.',
  );
  expect(stepOf(facts).soften).toBe('');
  // Never what is softened in the same breath: another border of these colours is soft.
  const both = madeFacts({
    slots: [land, { ...sky, reserve: true, lightness: 95 }, { ...land, band: 3 }],
    borders: [border(0, 1), border(1, 2, { soft: 0.8 })],
    washes: { sheet: [[0, 2]] },
  });
  expect(stepOf(both, 1, 'wet-in-wet').soften).toMatch(/^While it shines, soften/);
  expect(stepOf(both, 1, 'wet-in-wet').soften).not.toContain('crisp');
  expect(stepOf(facts).watch).toMatch(/edges stay as the brush leaves them, crisp/);
});
