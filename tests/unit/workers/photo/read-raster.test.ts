import { expect, test } from 'vitest';
import { judgeTrust, knownColours } from '../../../../workers/photo/read-raster.ts';

const readBack = (change: (code: number, at: number) => number): Uint8ClampedArray => {
  const bytes = knownColours.flatMap((colour) => [...colour, 255]);
  return new Uint8ClampedArray(bytes.map(change));
};

test('untouched pixels, and pixels with their lowest bit played with, are true', () => {
  expect(judgeTrust(readBack((code) => code))).toBe('true');
  expect(judgeTrust(readBack((code, at) => (at % 3 ? code : code ^ 1)))).toBe('true');
});

test('small noise is shaky', () => {
  expect(judgeTrust(readBack((code, at) => code + (at % 2 ? 6 : -6)))).toBe('shaky');
});

test('an empty canvas, all white and random pixels are false', () => {
  expect(judgeTrust(readBack(() => 0))).toBe('false');
  expect(judgeTrust(readBack(() => 255))).toBe('false');
  expect(judgeTrust(readBack((_, at) => (at * 97) % 256))).toBe('false');
  expect(judgeTrust(new Uint8ClampedArray(0))).toBe('false');
});

test('8 code values off on the mean are shaky still, 9 are false', () => {
  const off = (by: number) => readBack((code) => (code < 128 ? code + by : code - by));
  expect(judgeTrust(off(8))).toBe('shaky');
  expect(judgeTrust(off(9))).toBe('false');
});
