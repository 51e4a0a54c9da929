import { describe, expect, test } from 'vitest';
import type { PlanFacts } from '../../../../../app/core/plan/plan-facts.ts';
import { draftSteps } from '../../../../../app/core/plan/steps/draft-steps.ts';
import { border, type MadeWork, madeFacts } from '../../../../support/plan/made-work.ts';

const staining = 'pb153-phthalocyanine-blue';
/** Two washes over a white, a light and a dark: the first over both, the second over the dark. */
const made: MadeWork = {
  slots: [
    { lightness: 97, band: 1, family: 1, reserve: true },
    { lightness: 70, band: 2, family: 1, share: 0.3 },
    { lightness: 30, band: 3, family: 1, share: 0.1 },
  ],
  washes: { sheet: [[1, 2], [2]] },
  loads: { 1: 5 },
};
const techniques = (facts: PlanFacts) =>
  draftSteps(facts).flatMap((work) => (work.kind === 'wash' ? [work.technique] : []));
const withSoft = (toWhite: number, toDark: number, changed: Partial<MadeWork> = {}) =>
  techniques(
    madeFacts({
      ...made,
      borders: [border(0, 1, { soft: toWhite }), border(1, 2, { soft: toDark })],
      ...changed,
    }),
  );

describe('how a wash goes on', () => {
  test('the first on wet paper where more than half of its outer borders is soft', () => {
    expect(withSoft(0.5, 0)[0]).toBe('wet on dry');
    expect(withSoft(0.51, 0)[0]).toBe('wet-in-wet');
    expect(withSoft(0, 1)[0]).toBe('wet on dry'); // a border within it is none of its own
  });

  test('a later one where more than 58 % is, and nothing under it lifts', () => {
    const stained = { paints: { 1: staining } };
    expect(withSoft(0, 0.58, stained)[1]).toBe('wet on dry');
    expect(withSoft(0, 0.59, stained)[1]).toBe('wet-in-wet');
    expect(withSoft(0, 0.66)[1]).toBe('wet on dry'); // viridian lifts (R16)
  });

  test('a thin one over more than three fifths of what was painted first is a glaze', () => {
    const over = (dark: number, load = 5) =>
      techniques(
        madeFacts({
          ...made,
          slots: [
            ...made.slots.slice(0, 1),
            { lightness: 70, band: 2, family: 1, share: 1 - dark },
            { lightness: 30, band: 3, family: 1, share: dark },
          ],
          loads: { 1: load },
        }),
      )[1];
    expect(over(0.59)).toBe('wet on dry');
    expect(over(0.61)).toBe('glaze');
    expect(over(0.61, 14)).toBe('wet on dry'); // as thick as cream
  });
});

test('the order: prepared, washed from light to dark, accents where there is more than one wash, a last look', () => {
  const keys = (facts: PlanFacts) => draftSteps(facts).map(({ key }) => key.split('/sheet')[0]);
  expect(keys(madeFacts(made))).toEqual([
    'prepare',
    'puddles',
    'transfer',
    'wash',
    'wash',
    'accents',
    'last-look',
  ]);
  expect(keys(madeFacts({ ...made, washes: { sheet: [[1, 2]] } }))).not.toContain('accents');
});
