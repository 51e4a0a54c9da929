import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rowAsText, rowFromText } from '../../../../app/storage/backup/plain-text.ts';
import { runs } from '../../../support/more-runs.ts';

test('rows come back as they were, bytes of every kind and length too', () => {
  const bytes = fc.uint8Array({ maxLength: 300 });
  const row = fc.record({
    list: fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => n + 0)),
    buffer: bytes.map((each) => new Uint8Array(each).buffer),
    plain: bytes.map((each) => new Uint8Array(each)),
    clamped: bytes.map((each) => new Uint8ClampedArray(each)),
    words: fc.string(),
  });
  fc.assert(
    fc.property(row, (each) => {
      expect(rowFromText(rowAsText(each))).toEqual(each);
    }),
    runs(100, 3),
  );
  const long = new Uint8Array(200_000).map((_, i) => i % 253);
  expect(rowFromText(rowAsText({ long }))).toEqual({ long });
});

test('a part of a larger buffer is kept as that part', () => {
  const part = new Uint8Array([1, 2, 3, 4, 5]).subarray(1, 3);
  expect(rowFromText(rowAsText(part))).toEqual(new Uint8Array([2, 3]));
});

test('what would not come back is not written', () => {
  for (const value of [new Float32Array(1), new Map(), new Set()])
    expect(() => rowAsText({ value })).toThrow(TypeError);
});

test('no text reaches behind an object, or too deep', () => {
  for (const text of [
    '',
    'x',
    '{"__proto__":{}}',
    '[{"a":{"constructor":1}}]',
    '{"prototype":null}',
    `${'['.repeat(100_000)}${']'.repeat(100_000)}`,
    '{"bytesAs":"ArrayBuffer","base64":"*"}',
    '{"bytesAs":"ArrayBuffer"}',
    '{"bytesAs":"Function","base64":""}',
  ])
    expect(() => rowFromText(text), text.slice(0, 40)).toThrow(/This copy is damaged/);
});
