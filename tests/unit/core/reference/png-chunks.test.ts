import { crc32 } from 'node:zlib';
import { expect, test } from 'vitest';
import { withoutHiddenText, withTrueSums } from '../../../../app/core/reference/png-chunks.ts';
import { greyPng } from '../../../support/png.ts';

// Chunks as in Portable Network Graphics (PNG) Specification (Third Edition), W3C, 2025; sums against those of zlib.

function chunk(name: string, data: string): Buffer {
  const out = Buffer.alloc(12 + data.length);
  out.writeUInt32BE(data.length, 0);
  out.write(name + data, 4, 'latin1');
  out.writeUInt32BE(crc32(out.subarray(4, 8 + data.length)), 8 + data.length);
  return out;
}

const picture = greyPng(3, 2, 90);
const withChunk = (...more: Buffer[]): Buffer =>
  Buffer.concat([picture.subarray(0, 33), ...more, picture.subarray(33)]);

test('tags written as text, or packed, are left out; all else stays', () => {
  const seen = chunk('tEXt', 'Title\0seed heads');
  const hidden = [
    chunk('zTXt', 'Raw profile type exif\0\0packed'),
    chunk('tEXt', 'Raw profile type APP1\0hex'),
    chunk('iTXt', 'XML:com.adobe.xmp\0\x01\0\0\0packed'),
  ];
  const plainXmp = chunk('iTXt', 'XML:com.adobe.xmp\0\0\0\0\0<x/>');
  const cleaned = withoutHiddenText(withChunk(seen, ...hidden, plainXmp));
  expect(Buffer.from(cleaned)).toEqual(withChunk(seen, plainXmp));
  expect(withoutHiddenText(picture)).toBe(picture);
  const jpeg = new Uint8Array([0xff, 0xd8, 0xff]);
  expect(withoutHiddenText(jpeg)).toBe(jpeg);
});

test('sums of changed tags are put right', () => {
  const bytes = withChunk(chunk('eXIf', 'MM\0*somewhere'), chunk('iTXt', 'a place'));
  const right = Buffer.from(bytes);
  bytes.fill(0x20, 33 + 8 + 4, 33 + 8 + 13);
  withTrueSums(bytes);
  for (let i = 8; i < bytes.length; i += 12 + bytes.readUInt32BE(i)) {
    const end = i + 8 + bytes.readUInt32BE(i);
    expect(bytes.readUInt32BE(end)).toBe(crc32(bytes.subarray(i + 4, end)));
  }
  expect(bytes.equals(right)).toBe(false);
});

test('a PNG cut short is left as it is', () => {
  for (let length = 0; length < picture.length; length++) {
    const part = picture.subarray(0, length);
    expect(withoutHiddenText(part)).toBe(part);
    withTrueSums(part);
  }
});

test('what begins as a PNG in part only is none: not a byte of it is changed', () => {
  const bytes = withChunk(chunk('tEXt', 'Raw profile type exif\0hex'), chunk('eXIf', 'MM'));
  bytes[bytes.indexOf('MM') + 2] = 0x20; // a sum that is wrong
  expect(withoutHiddenText(bytes).length).toBeLessThan(bytes.length);
  for (const [place, byte] of [
    [0, 0x88],
    [1, 0x51],
    [5, 0x20],
  ] as const) {
    const other = Buffer.from(bytes);
    other[place] = byte;
    const before = Buffer.from(other);
    expect(withoutHiddenText(other)).toBe(other);
    withTrueSums(other);
    expect(other.equals(before)).toBe(true);
  }
});
