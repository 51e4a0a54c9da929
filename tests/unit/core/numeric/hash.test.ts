import { expect, test } from 'vitest';
import {
  hashCodes,
  hashText,
  numbersFingerprint,
  textFingerprint,
} from '../../../../app/core/numeric/hash.ts';

// Test vectors of FNV-1a, 32 bits, by its authors (from memory).
test.each([
  ['', 0x811c9dc5],
  ['a', 0xe40c292c],
  ['foobar', 0xbf9cf968],
])('%j has the published hash', (text, wanted) => {
  expect(hashCodes(new TextEncoder().encode(text))).toBe(wanted);
  expect(hashText(text)).toBe(wanted);
});

test('another start gives another hash', () => {
  const codes = Uint16Array.of(300, 65535);
  expect(hashCodes(codes, 1)).not.toBe(hashCodes(codes, 2));
});

test('a text has the hash of its code units', () => {
  const text = 'Zoë \u{1F33F}';
  const codes = Uint16Array.from({ length: text.length }, (_, i) => text.charCodeAt(i));
  expect(hashText(text, 40389)).toBe(hashCodes(codes, 40389));
});

test('fingerprints tell rows apart that differ in one digit, and join nothing', () => {
  const rows = [[], [0], [1, 2], [2, 1], [1, 2 + 1e-15], [12], [-0]];
  expect(new Set(rows.map(numbersFingerprint)).size).toBe(rows.length);
  expect(numbersFingerprint([0.1, 0.2])).toBe(numbersFingerprint([0.1, 0.2]));
  const texts = ['', 'a', 'b', 'ab', 'ba'];
  expect(new Set(texts.map(textFingerprint)).size).toBe(texts.length);
});
