import { expect, test } from 'vitest';
import { loadChanged, partsChanged } from '../../../app/model/change-mix.ts';

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
  expect(counts(partsChanged(mix, 'b', 1))).toEqual([6, 2]);
  expect(counts(partsChanged({ ...mix, ...partsChanged(mix, 'b', 1) }, 'a', 1))).toEqual([6, 2]);
  expect(counts(partsChanged(mix, 'b', -1))).toEqual([6]);
  expect(counts(partsChanged({ load: 1, parts: [{ paint: 'a', parts: 1 }] }, 'a', -1))).toEqual([
    1,
  ]);
});

test('half an octave stronger or weaker, within what paint and water can do', () => {
  expect(loadChanged(mix, 1).load).toBeCloseTo(2.828, 3);
  expect(loadChanged(mix, -1).load).toBeCloseTo(1.414, 3);
  expect(loadChanged({ ...mix, load: 32 }, 1).load).toBe(32);
  expect(loadChanged({ ...mix, load: 0.25 }, -1).load).toBe(0.25);
});
