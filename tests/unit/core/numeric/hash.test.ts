import { expect, test } from 'vitest';
import { hashCodes } from '../../../../app/core/numeric/hash.ts';

// Test vectors of FNV-1a, 32 bits, by its authors (from memory).
test.each([
  ['', 0x811c9dc5],
  ['a', 0xe40c292c],
  ['foobar', 0xbf9cf968],
])('%j has the published hash', (text, wanted) => {
  expect(hashCodes(new TextEncoder().encode(text))).toBe(wanted);
});

test('another start gives another hash', () => {
  const codes = Uint16Array.of(300, 65535);
  expect(hashCodes(codes, 1)).not.toBe(hashCodes(codes, 2));
});
