import { expect, test } from 'vitest';
import { accentsStep, placesToLift } from '../../../../../app/core/plan/steps/finishing-steps.ts';
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
