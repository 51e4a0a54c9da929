import { expect, test } from 'vitest';
import { CellTones } from '../../../../../app/core/reading/shapes/cells.ts';

test('a cell has the mean of its lightness, and the hue its texture has for the eye', () => {
  // Half of it grey, half C* 40: the plain mean is 20, the mean by C* + 12 is 52 x 40 / 64 = 32.5.
  const tones = new CellTones(Uint8Array.from([9, 9, 9, 9, 3]), {
    lightness: Float32Array.from([40, 60, 40, 60, 10]),
    a: Float32Array.from([0, 40, 0, 40, 1]),
    b: Float32Array.from([0, 0, 0, 0, 2]),
  });
  const found = tones.meanOf((cell) => cell === 9);
  expect(found?.pixels).toBe(4);
  expect(found?.lab[0]).toBe(50);
  expect(found?.lab[1]).toBeCloseTo(32.5, 6);
  expect(found?.lab[2]).toBe(0);
  expect(tones.meanOf((cell) => cell === 3)?.lab).toEqual([10, 1, 2]);
  expect(tones.meanOf((cell) => cell === 5)).toBeNull();
});

test('what is nearly neutral stays so: a few strong colours in it or at its border leave paper paper', () => {
  // Eighteen greys and two of the neighbour's colour: by C* + 12 the mean would be 9, more than a white may have.
  const a = Float32Array.from({ length: 20 }, (_, i) => (i < 18 ? 0 : 30));
  const tones = new CellTones(new Uint8Array(20).fill(7), {
    lightness: new Float32Array(20).fill(97),
    a,
    b: new Float32Array(20),
  });
  expect(tones.meanOf((cell) => cell === 7)?.lab[1]).toBeCloseTo(3, 9);
});
