import { expect, test } from 'vitest';
import {
  accentsStep,
  darkestSlots,
  isTextured,
  lastLookStep,
  liftStep,
  mixesOverSlot,
  placesToLift,
  placesToSplatter,
  splatterStep,
} from '../../../../../app/core/plan/steps/finishing-steps.ts';
import { border, type MadeWork, madeFacts } from '../../../../support/plan/made-work.ts';

const made: MadeWork = {
  slots: [
    { lightness: 70, band: 2, family: 1 },
    { lightness: 30, band: 3, family: 2 },
  ],
  washes: { sheet: [[0, 1]] },
};
const facts = madeFacts(made);
const [row] = facts.passages[0]?.washes[0]?.mixes ?? [];
if (!row) throw new Error('no mix');

test('accents are set with the darkest puddles, of one paint or of more; two at most', () => {
  const mixes = [
    { ...row, id: 'bare', puddle: null, parts: [], expected: [10, 0, 0] },
    { ...row, id: 'too light', puddle: 'A', expected: [40.5, 0, 0] },
    { ...row, id: 'third', puddle: 'B', expected: [39, 0, 0] },
    { ...row, id: 'second', puddle: 'C', expected: [35, 0, 0] },
    { ...row, id: 'darkest', puddle: 'D', expected: [30, 0, 0] },
  ] as const;
  expect(accentsStep(facts, [1], mixes).mixes.toSorted()).toEqual(['darkest', 'second']);
  // A mix more than one value lighter than the darkest makes no accent.
  const [, tooLight, , , darkest] = mixes;
  expect(accentsStep(facts, [1], [tooLight, darkest]).mixes).toEqual(['darkest']);
  expect(accentsStep(facts, [1], [tooLight]).mixes).toEqual(['too light']);
});

test('a light is lifted out of the darker side of a long soft edge, if its paint lifts', () => {
  const places = (more: Partial<MadeWork>, soft = 0.7, lengthMm = 100, contrast = 20): number[] =>
    placesToLift(
      madeFacts({ ...made, borders: [border(0, 1, { soft, lengthMm, contrast })], ...more }),
    );
  expect(places({})).toEqual([1]);
  expect(places({ slots: [...made.slots].reverse() })).toEqual([0]);
  expect(places({}, 0.59)).toEqual([]);
  expect(places({}, 0.7, 50)).toEqual([]);
  expect(places({}, 0.7, 100, 9)).toEqual([]);
  // A staining paint stays where it is (R11).
  expect(places({ paints: { 2: 'pb153-phthalocyanine-blue' } })).toEqual([]);
});

const sheetMm2 = 100_000;
const broken = { smallShapes: 40, shapes: 66, largestMm2: 9900 };

test('broken up: forty small shapes, three fifths of all, and none plain over a tenth of the sheet', () => {
  expect(isTextured(broken, sheetMm2)).toBe(true);
  expect(isTextured({ ...broken, smallShapes: 39, shapes: 39 }, sheetMm2)).toBe(false);
  expect(isTextured({ ...broken, shapes: 68 }, sheetMm2)).toBe(false);
  expect(isTextured({ ...broken, largestMm2: 10_100 }, sheetMm2)).toBe(false);
});

test('spots go where it is broken up and painted at least twice, never on what stays white', () => {
  const places = (more: Partial<MadeWork['slots'][number]>, washes = [[0, 1], [1]]): number[] =>
    placesToSplatter(
      madeFacts({
        slots: [
          { lightness: 70, band: 2, family: 1, ...broken },
          { lightness: 30, band: 3, family: 2, ...broken, ...more },
        ],
        washes: { sheet: washes },
      }),
    );
  expect(places({})).toEqual([1]);
  expect(places({}, [[0, 1]])).toEqual([]);
  expect(places({ smallShapes: 0 })).toEqual([]);
  expect(places({ reserve: true })).toEqual([]);
});

test('over a shape lie the mixes of its own colour and passage, wash by wash', () => {
  const two = madeFacts({
    slots: [
      { lightness: 70, family: 1 },
      { lightness: 30, family: 2 },
      { lightness: 30, family: 1, passage: 'subject' },
    ],
    washes: { sheet: [[0, 1], [1]], subject: [[2]] },
  });
  const ids = (slot: number): string[] => mixesOverSlot(two, slot).map(({ id }) => id);
  expect([0, 1, 2].map(ids)).toEqual([['sheet/1/1'], ['sheet/1/2', 'sheet/2/2'], ['subject/1/1']]);
});

test('the darkest shapes are those of the last value that is painted', () => {
  const shapes = [2, 3, 3, 4].map((band) => ({ lightness: 50, band, reserve: band === 4 }));
  expect(darkestSlots(madeFacts({ slots: shapes, washes: {} }))).toEqual([1, 2]);
});

// Own estimates, no source.
test('minutes on a quarter sheet: lifting 2 to 6, splatter 2 to 5, forty accents of eight seconds, a look 3 to 10', () => {
  expect(liftStep(facts, [1]).paintMinutes).toEqual([2, 6]);
  expect(splatterStep(facts, [1]).paintMinutes).toEqual([2, 5]);
  expect(accentsStep(facts, [1], []).paintMinutes).toEqual([3, 8]); // 5.33 minutes
  expect(lastLookStep(facts).paintMinutes).toEqual([3, 10]);
  expect(lastLookStep(facts).slots).toEqual([0, 1]);
});
