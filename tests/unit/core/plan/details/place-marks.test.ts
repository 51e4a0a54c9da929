import { describe, expect, test } from 'vitest';
import type { Mark } from '../../../../../app/core/plan/details/mark.ts';
import {
  placeMarks,
  slotsOfMarks,
  sparklesOf,
} from '../../../../../app/core/plan/details/place-marks.ts';
import type { Mix, Step } from '../../../../../app/core/plan/plan.ts';
import type { Detail } from '../../../../../app/core/reading/details/detail.ts';
import type { Reading } from '../../../../../app/core/reading/reading.ts';
import { words } from '../../../../../app/core/words/plan/words.ts';
import { madeReading } from '../../../../support/plan/made-reading.ts';

// Which figures: (own), as the planner's.
const shape = (more: Partial<Detail>): Detail => ({
  isLight: false,
  lines: [0, 0, 1],
  at: [0.5, 0.5],
  areaMm2: 4,
  lab: [30, 0, 0],
  rows: [0],
  shares: [1],
  near: 1,
  ...more,
});
const shapes = [
  shape({ at: [0.1, 0.1], rows: [2] }),
  shape({ at: [0.5, 0.9], rows: [0, 1] }),
  shape({ at: [0.4, 0.8], rows: [1] }),
  shape({ isLight: true, lab: [85, 0, 0] }),
  shape({ isLight: true, lab: [70, 0, 0] }),
  shape({ isLight: true, lab: [85, 0, 0], rows: [1] }), // set in what is light already
  shape({ isLight: true, lab: [80, 8, 30] }), // a warm light: white would glare in it
];
const reading = {
  ...madeReading([{ band: 1, family: 1, share: 1, lab: [80, 0, 0] }], [], 'photographed'),
  squares: {
    slots: [4, 2, 7],
    colours: [65, 4, 20, 88, 0, 2, 50, 0, 0],
  } as unknown as NonNullable<Reading['squares']>,
  details: { cellPx: 2, shapes },
};
const facts = { reading };
const mixes = [
  { id: 'one', puddle: 'B' },
  { id: 'two', puddle: 'A' },
  { id: 'three', puddle: 'C' },
] as Mix[];
const step = (kind: Step['kind'], key = `${kind}/sheet/0`): Step =>
  ({ kind, key, n: 0, prompt: 'as before', slots: [1], mixes: ['x'] }) as unknown as Step;
const steps = [
  step('wash', 'wash/sheet/1'),
  step('details'),
  step('dry', 'dry/details/sheet/0'),
  step('accents'),
  step('last-lights'),
  step('last-look'),
];
const mark = (kind: Mark['kind'], n: number, mix?: string): Mark => ({
  kind,
  shape: n,
  ...(mix && { mix }),
  lab: [20, 0, 0],
});
const all = [
  mark('detail', 1, 'one'),
  mark('detail', 2, 'two'),
  mark('accent', 0, 'two'),
  mark('sparkle', 3),
];

describe('marks on the steps', () => {
  const placed = placeMarks(steps, all, mixes, facts);
  test('lie on the sheet from their own step on', () => {
    expect(placed.map(({ marks = [] }) => marks.map(({ shape: n }) => n))).toEqual([
      [],
      [1, 2],
      [1, 2],
      [1, 2, 0],
      [1, 2, 0, 3],
      [1, 2, 0, 3],
    ]);
    expect(placed[0]).not.toHaveProperty('marks');
  });

  test('tell which puddles, where most lie, how many', () => {
    expect(words(placed[1]?.prompt)).toBe(
      'Set the 2 small shapes shown, most of them at the bottom, with the point of the brush from puddles A and B: a touch each.',
    );
    expect(placed[1]).toMatchObject({ mixes: ['one', 'two'], slots: [2, 4] });
    expect(words(placed[3]?.prompt)).toContain('puddle A');
    expect(words(placed[3]?.prompt)).toContain('the one darkest touch shown, upper left.');
    expect(placed[3]).toMatchObject({ mixes: ['two'], slots: [7] });
    expect(words(placed[4]?.prompt)).toBe('as before');
    for (const { prompt } of placed) expect(words(prompt).length).toBeLessThanOrEqual(160);
  });

  test('take a few seconds each', () => {
    const many = Array.from({ length: 45 }, () => mark('detail', 1, 'one'));
    const [, few, more] = [...placed.slice(0, 2), placeMarks(steps, many, mixes, facts)[1]];
    expect(more?.paintMinutes[1]).toBeGreaterThan(few?.paintMinutes[1] ?? 99);
  });

  test('a step for details that found none goes, and its wait; the others keep what they said', () => {
    const left = placeMarks(steps, [], mixes, facts);
    expect(left.map(({ kind, n }) => [kind, n])).toEqual([
      ['wash', 1],
      ['accents', 2],
      ['last-lights', 3],
      ['last-look', 4],
    ]);
    expect(words(left[1]?.prompt)).toBe('as before');
  });
});

test('sparkles are lights white comes nearer to than what is painted there, twelve at most', () => {
  expect(sparklesOf(facts).map(({ shape: n, kind }) => [n, kind])).toEqual([[3, 'sparkle']]);
  const many = { ...reading, details: { cellPx: 2, shapes: Array(20).fill(shapes[3]) } };
  expect(sparklesOf({ reading: many })).toHaveLength(12);
  const { details: _, ...older } = reading;
  expect(sparklesOf({ reading: older })).toEqual([]);
});

test('marks lie in the slots of their squares', () => {
  expect(slotsOfMarks(facts, all)).toEqual([2, 4, 7]);
});
