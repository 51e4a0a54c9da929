import { expect, test } from 'vitest';
import { changeLoad, changeParts, takesAnother } from '../../../../app/core/plan/change-mix.ts';

const mix = {
  parts: [
    { paint: 'a', parts: 6 },
    { paint: 'b', parts: 1 },
  ],
  load: 2,
};
const counts = (changed: { parts: readonly { parts: number }[] }) =>
  changed.parts.map(({ parts }) => parts);

test('a part more, up to eight in all; a part less, until one paint is left', () => {
  expect(counts(changeParts(mix, 'b', 1))).toEqual([6, 2]);
  expect(counts(changeParts({ ...mix, ...changeParts(mix, 'b', 1) }, 'a', 1))).toEqual([6, 2]);
  expect(counts(changeParts(mix, 'b', -1))).toEqual([6]);
  // Seven to one can't be squeezed out; one that was planned so may come nearer.
  expect(counts(changeParts(mix, 'a', 1))).toEqual([6, 1]);
  const lopsided = {
    ...mix,
    parts: [
      { paint: 'a', parts: 7 },
      { paint: 'b', parts: 1 },
    ],
  };
  expect(counts(changeParts(lopsided, 'a', -1))).toEqual([6, 1]);
  expect(counts(changeParts({ load: 1, parts: [{ paint: 'a', parts: 1 }] }, 'a', -1))).toEqual([1]);
});

test('a paint that was not in it comes in with one part; not a fourth, and not beyond eight parts', () => {
  const three = changeParts(mix, 'c', 1);
  expect(three.parts).toEqual([...mix.parts, { paint: 'c', parts: 1 }]);
  expect(takesAnother(three)).toBe(false);
  expect(changeParts(three, 'd', 1).parts).toBe(three.parts);
  const full = changeParts(mix, 'b', 1);
  expect(takesAnother(full)).toBe(false);
  expect(changeParts(full, 'c', 1).parts).toBe(full.parts);
  expect(changeParts(mix, 'c', -1).parts).toBe(mix.parts);
});

test('half an octave stronger or weaker, within what paint and water can do', () => {
  expect(changeLoad(mix, 1).load).toBeCloseTo(2.828, 3);
  expect(changeLoad(mix, -1).load).toBeCloseTo(Math.SQRT2, 3);
  // Two full coats of 20 ml/m2 at most, and no paler than a sixth of the usual tea (own figures).
  expect(changeLoad({ ...mix, load: 40 }, 1).load).toBe(40);
  expect(changeLoad({ ...mix, load: 0.15 }, -1).load).toBe(0.15);
});
