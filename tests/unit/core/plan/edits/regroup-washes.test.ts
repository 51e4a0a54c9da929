import { expect, test } from 'vitest';
import { partOfWash } from '../../../../../app/core/plan/edits/regroup-washes.ts';
import { madeFacts } from '../../../../support/plan/made-work.ts';

const facts = madeFacts({
  slots: [
    { lightness: 80, band: 1, family: 1 },
    { lightness: 60, band: 2, family: 1 },
    { lightness: 60, band: 2, family: 2 },
    { lightness: 40, band: 3, family: 3 },
  ],
  washes: { sheet: [[0, 1, 2, 3]] },
});
const [laid] = facts.passages[0]?.washes ?? [];
if (!laid) throw new Error('no wash');
const wash = {
  ...laid,
  weak: [1],
  full: [2, 3],
  after: [80, 60, 61, 40].map((lightness) => [lightness, 0, 0] as const),
  // The third family is left bare in this wash.
  mixes: laid.mixes.map((mix) => (mix.family === 3 ? { ...mix, puddle: null, parts: [] } : mix)),
};
const part = (...indices: readonly number[]) => partOfWash(wash, facts.slots, indices);
const families = (...indices: readonly number[]): number[] =>
  part(...indices).mixes.map(({ family }) => family);

test('a part of a wash needs the mixes of its own shapes, and none for a shape left bare', () => {
  expect(families(0, 1)).toEqual([1]);
  expect(families(0, 2)).toEqual([1, 2]);
  expect(families(2, 3)).toEqual([2]);
  expect(families(3)).toEqual([]);
});

test('it has the values of its own shapes, and how they come out', () => {
  expect(part(0)).toMatchObject({ weak: [1], full: [], slots: [0], after: [[80, 0, 0]] });
  expect(part(1, 2)).toMatchObject({ weak: [], full: [2] });
  expect(part(0, 3)).toMatchObject({ weak: [1], full: [2, 3] });
  expect(part(2, 3).after).toEqual([
    [61, 0, 0],
    [40, 0, 0],
  ]);
});
