import { expect, test } from 'vitest';
import { knownColours, trustIn } from '../../../workers/photo/known-colours.ts';

const readBack = (change: (code: number, at: number) => number): Uint8ClampedArray => {
  const bytes = knownColours.flatMap((colour) => [...colour, 255]);
  return new Uint8ClampedArray(bytes.map(change));
};

test('untouched pixels, and pixels with their lowest bit played with, are true', () => {
  expect(trustIn(readBack((code) => code))).toBe('true');
  expect(trustIn(readBack((code, at) => (at % 3 ? code : code ^ 1)))).toBe('true');
});

test('small noise is shaky', () => {
  expect(trustIn(readBack((code, at) => code + (at % 2 ? 6 : -6)))).toBe('shaky');
});

test('an empty canvas, all white and random pixels are false', () => {
  expect(trustIn(readBack(() => 0))).toBe('false');
  expect(trustIn(readBack(() => 255))).toBe('false');
  expect(trustIn(readBack((_, at) => (at * 97) % 256))).toBe('false');
  expect(trustIn(new Uint8ClampedArray(0))).toBe('false');
});
