import '../../support/same-bytes.ts';
import { expect, test } from 'vitest';

test('arrays of numbers are equal where every number is, and only there', () => {
  expect({ map: Uint8Array.of(1, 2, 3) }).toEqual({ map: Uint8Array.of(1, 2, 3) });
  expect({ map: Uint8Array.of(1, 2, 3) }).not.toEqual({ map: Uint8Array.of(1, 2, 4) });
  expect(Uint8Array.of(1, 2)).not.toEqual(Uint8Array.of(1, 2, 0));
  expect(Uint8Array.of(1, 2)).not.toEqual(Int8Array.of(1, 2));
  expect(Float32Array.of(Number.NaN, 0.5)).toEqual(Float32Array.of(Number.NaN, 0.5));
  expect(Uint8Array.of(9, 1, 2).subarray(1)).toEqual(Uint8Array.of(1, 2));
});
