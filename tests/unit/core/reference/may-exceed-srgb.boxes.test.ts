import { expect, test } from 'vitest';
import { mayExceedSrgb } from '../../../../app/core/reference/may-exceed-srgb.ts';

/** A box of ISO/IEC 14496-12: its size, its name and what it holds; `size` where it tells another. */
function box(name: string, parts: readonly Buffer[], size?: number): Buffer {
  const holds = Buffer.concat(parts);
  const head = Buffer.alloc(8);
  head.writeUInt32BE(size ?? 8 + holds.length, 0);
  head.write(name, 4, 'latin1');
  return Buffer.concat([head, holds]);
}

const fileType = box('ftyp', [Buffer.from('avif\0\0\0\0avif', 'latin1')]);
const version = Buffer.alloc(4);
/** Colour by number: primaries, transfer, matrix, range. */
const numbered = (primaries: number): Buffer =>
  box('colr', [Buffer.from('nclx', 'latin1'), Buffer.from([0, primaries, 0, 13, 0, 6, 0x80])]);
const wide = numbered(12);

/** A photo with a colour in the folder of properties; the sizes told of the three holders. */
const photo = (colour: Buffer, meta?: number, properties?: number, container?: number): Buffer => {
  const inner = box('iprp', [box('ipco', [colour], container)], properties);
  return Buffer.concat([fileType, box('meta', [version, inner], meta)]);
};

test.each([
  ['told in full', []],
  ['0 in the outermost', [0]],
  ['0 in the middle', [undefined, 0]],
  ['0 in the innermost', [undefined, undefined, 0]],
  ['0 in all', [0, 0, 0]],
] as const)('a box of size 0 reaches to the end: %s', (_, sizes) => {
  expect(mayExceedSrgb(photo(wide, ...sizes))).toBe(true);
  expect(mayExceedSrgb(photo(numbered(1), ...sizes))).toBe(false);
});

test.each([1, 2, 7])('a box of size %i is none: nothing is read beyond it', (size) => {
  expect(mayExceedSrgb(Buffer.concat([fileType, box('free', [], size), wide]))).toBe(false);
});

test('an empty box is passed over, and so is one of any length', () => {
  for (const length of [0, 1, 5, 40]) {
    const free = box('free', [Buffer.alloc(length)]);
    expect(mayExceedSrgb(Buffer.concat([fileType, free, photo(wide).subarray(20)]))).toBe(true);
  }
});

test('a box of size 0 is the last: what it holds is no box of its own', () => {
  const data = box('mdat', [wide], 0);
  expect(mayExceedSrgb(Buffer.concat([fileType, data]))).toBe(false);
});

test('a holder ends where it says, and what follows is read as its neighbour', () => {
  const inner = box('iprp', [box('ipco', [])]);
  const meta = box('meta', [version, inner]);
  expect(mayExceedSrgb(Buffer.concat([fileType, meta, numbered(2)]))).toBe(false);
  expect(mayExceedSrgb(Buffer.concat([fileType, meta, wide]))).toBe(true);
});
