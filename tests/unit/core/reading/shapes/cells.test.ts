import { expect, test } from 'vitest';
import { CellTones } from '../../../../../app/core/reading/shapes/cells.ts';

test('a cell has the mean of its lightness, and the hue its texture has for the eye', () => {
  // Half of it grey, half C* 40: the plain mean is 20, the mean by C* + 12 is 52 x 40 / 64 = 32.5.
  const many = Array.from({ length: 4000 }, (_, i) => i % 2);
  const tones = new CellTones(Uint8Array.from([...many.map(() => 9), 3]), {
    lightness: Float32Array.from([...many.map((odd) => 40 + 20 * odd), 10]),
    a: Float32Array.from([...many.map((odd) => 40 * odd), 1]),
    b: Float32Array.from([...many.map(() => 0), 2]),
  });
  const found = tones.meanOf((cell) => cell === 9);
  expect(found?.pixels).toBe(4000);
  expect(found?.lab[0]).toBe(50);
  expect(found?.lab[1]).toBeCloseTo(32.5, 1);
  expect(found?.lab[2]).toBe(0);
  expect(tones.meanOf((cell) => cell === 3)?.lab).toEqual([10, 1, 2]);
  expect(tones.meanOf((cell) => cell === 5)).toBeNull();
});

test('beside a strong colour grey stays grey: what is blended at the border counts no more than any other place', () => {
  // Twenty greys, the last two half the neighbour's colour: the plain mean of a* is 3, by C* it would be 9.
  const codes = Array.from({ length: 20 }, (_, i) => (i < 18 ? 0 : 30));
  const tones = new CellTones(Uint8Array.from([...codes.map(() => 7), 8]), {
    lightness: Float32Array.from([...codes.map(() => 90), 60]),
    a: Float32Array.from([...codes, 60]),
    b: new Float32Array(21),
  });
  expect(tones.meanOf((cell) => cell === 7)?.lab[1]).toBeCloseTo(3, 9);
});
