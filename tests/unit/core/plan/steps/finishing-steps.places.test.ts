import { describe, expect, test } from 'vitest';
import {
  accentsStep,
  darkestSlots,
  isTextured,
  lastLookStep,
  liftStep,
  placesToLift,
  placesToSplatter,
  splatterStep,
} from '../../../../../app/core/plan/steps/finishing-steps.ts';
import { border, madeFacts, sheet } from '../../../../support/plan/made-work.ts';
import { stained } from '../../../../support/plan/stained.ts';

const sheetMm2 = sheet.widthMm * sheet.heightMm;

// Limits and figures are (own): the docstrings of what is tested say why.
test.each([
  [{ smallShapes: 40, shapes: 66, largestMm2: 0 }, true], // 40 of 66 are 0.606
  [{ smallShapes: 39, shapes: 39, largestMm2: 0 }, false],
  [{ smallShapes: 60, shapes: 100, largestMm2: 0 }, true],
  [{ smallShapes: 59, shapes: 100, largestMm2: 0 }, false],
  [{ smallShapes: 60, shapes: 100, largestMm2: 0.0999 * sheetMm2 }, true],
  [{ smallShapes: 60, shapes: 100, largestMm2: 0.1 * sheetMm2 }, false],
])('%j is broken texture: %s', (slot, textured) => {
  expect(isTextured(slot, sheetMm2)).toBe(textured);
});

describe('places to lift', () => {
  const dark = { lightness: 40, family: 1 };
  const light = { lightness: 60, family: 2 };
  const places = (
    edges: Partial<Parameters<typeof border>[2]>,
    staining: 0 | 1 | 2 | null = 0,
    slots = [dark, light],
  ) =>
    placesToLift(
      stained(
        madeFacts({
          slots,
          borders: [border(0, 1, { soft: 0.6, contrast: 10, lengthMm: 67, ...edges })],
          washes: { sheet: [[0, 1]] },
        }),
        staining,
      ),
    );

  // 0.6 of 67 mm are 40.2 mm soft.
  test.each([
    ['at all its limits', places({}), [0]],
    ['less soft', places({ soft: 0.59, lengthMm: 100 }), []],
    ['less contrast', places({ contrast: 9.9 }), []],
    ['under 40 mm soft', places({ lengthMm: 66 }), []],
    ['the darker side, whichever comes first', places({}, 0, [light, dark]), [1]],
    ['a paint that stains a little', places({}, 1), []],
    ['one of which it is not known', places({}, null), []],
  ])('%s', (_, found, wanted) => expect(found).toEqual(wanted));

  test('nothing painted there, nothing to lift; each once, in order', () => {
    const made = (washes: number[][]) =>
      madeFacts({
        slots: [light, dark, light, dark],
        borders: [
          border(2, 3, { soft: 0.9, contrast: 20 }),
          border(0, 1, { soft: 0.9, contrast: 20 }),
          border(1, 2, { soft: 0.9, contrast: 20 }),
          border(1, 9, { soft: 0.9, contrast: 20 }),
        ],
        washes: { sheet: washes },
      });
    const facts = (washes: number[][]) => stained(made(washes), 0);
    expect(placesToLift(facts([[0, 1, 2, 3]]))).toEqual([1, 3]);
    expect(placesToLift(facts([[0, 2]]))).toEqual([]);
  });
});

test('splatter goes on broken texture with two mixes under it, never on a white', () => {
  const broken = { lightness: 40, shapes: 100, smallShapes: 60, largestMm2: 900 };
  const facts = madeFacts({
    slots: [broken, { ...broken, reserve: true }, { ...broken, family: 2 }, { lightness: 40 }],
    washes: {
      sheet: [
        [0, 1, 2, 3],
        [0, 1, 3],
      ],
    },
  });
  expect(placesToSplatter(facts)).toEqual([0]);
});

test('the darkest slots are those of the darkest band that is painted', () => {
  const facts = madeFacts({
    slots: [
      { lightness: 60, band: 2 },
      { lightness: 30, band: 3 },
      { lightness: 35, band: 3, family: 2 },
      { lightness: 20, band: 4, reserve: true },
    ],
    washes: { sheet: [[0, 1, 2]] },
  });
  expect(darkestSlots(facts)).toEqual([1, 2]);
  expect(
    darkestSlots(madeFacts({ slots: [{ lightness: 95, reserve: true }], washes: {} })),
  ).toEqual([]);
});

describe('the steps themselves', () => {
  const facts = madeFacts({
    slots: [
      { lightness: 60, family: 2, band: 3 },
      { lightness: 30, family: 1, band: 2 },
      { lightness: 30, family: 2, band: 2 },
    ],
    washes: { sheet: [[0, 1, 2]] },
  });
  const mixes = [50, 30, 39.9, 40.1, 20].map((lightness, i) => ({
    ...(facts.passages[0]?.washes[0]?.mixes[0] as never as { parts: object[] }),
    id: `mix ${i}`,
    expected: [lightness, 0, 0] as const,
    ...(lightness === 20 && { parts: [] }),
  }));

  test('minutes on a quarter sheet; families each once, in order', () => {
    expect(liftStep(facts, [0, 1, 2])).toMatchObject({ paintMinutes: [2, 6], families: [1, 2] });
    expect(splatterStep(facts, [0]).paintMinutes).toEqual([2, 5]);
    expect(lastLookStep(facts)).toMatchObject({ paintMinutes: [3, 10], slots: [0, 1, 2] });
    const accents = accentsStep(facts, [0, 1, 2], []);
    // 40 touches of 8 s are 5.3 minutes: 0.7 and 1.5 of that.
    expect(accents).toMatchObject({ paintMinutes: [3, 8], bands: [2, 3], families: [1, 2] });
  });

  test('accents take the two darkest mixes within 10 L* of the darkest that has paint', () => {
    const used = accentsStep(facts, [1], mixes as never).mixes;
    expect(used).toEqual(['mix 1', 'mix 2']);
    const alone = accentsStep(facts, [1], mixes.filter(({ id }) => id !== 'mix 2') as never).mixes;
    expect(alone).toEqual(['mix 1']);
  });
});
