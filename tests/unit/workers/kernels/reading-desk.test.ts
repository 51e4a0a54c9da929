import { afterEach, expect, test, vi } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import type { LinearRaster } from '../../../../app/core/raster/linear-raster.ts';
import type { Room } from '../../../../app/core/raster/room.ts';
import { simplify } from '../../../../app/core/raster/simplify.ts';
import { readPicture } from '../../../../app/core/reading/read-picture.ts';
import { quickSimplify, ReadingDesk } from '../../../../workers/kernels/reading-desk.ts';
import { opened, painted, photographs } from '../../../support/reading/rasters.ts';
import { seeded } from '../../../support/reading/seeded.ts';

afterEach(() => vi.unstubAllGlobals());

function expectAlike(raster: LinearRaster, pxPerMm: number): void {
  const plain = runToEnd(simplify(raster, pxPerMm));
  const found = runToEnd(quickSimplify(raster, pxPerMm));
  for (const name of ['lightness', 'a', 'b'] as const) {
    const same = Buffer.from(found[name].buffer).equals(Buffer.from(plain[name].buffer));
    expect({ name, same }).toEqual({ name, same: true });
  }
}

test.each([
  [1, 1, 1],
  [1, 9, 4],
  [9, 1, 0.2],
  [2, 3, 4],
  [4, 4, 2],
  [41, 33, 1],
  [63, 50, 4.2],
  [30, 70, 12],
])(
  '%i x %i px at %f px/mm comes out as plain loops have it, to the last bit',
  (width, height, pxPerMm) => {
    const random = seeded(width * height);
    const code = (): number => Math.round(255 * random());
    const { raster } = painted(width, height, () => [code(), code(), code()]);
    expectAlike(raster, pxPerMm);
  },
);

test.each(photographs)('so does %s', async (path) => {
  const { raster } = await opened(path, 801);
  const before = raster.red.slice();
  expectAlike(raster, raster.width / 381);
  expect(raster.red).toEqual(before);
});

/** Spoils what is left in a room, as another picture may have left it. */
function spoil({ buffer }: Room, start: number): void {
  new Float32Array(buffer, start).fill(Number.NaN);
}

test.each([
  [40, 32],
  [41, 33],
  [8, 61],
])(
  'in a room that was used before, %i x %i px come out alike and the raster stays',
  (width, height) => {
    const desk = new ReadingDesk();
    const random = seeded(width + height);
    const code = (): number => Math.round(255 * random());
    const { raster } = painted(width, height, () => [code(), code(), code()]);
    const plain = runToEnd(simplify(raster, 3));
    for (let round = 0; round < 2; round++) {
      const { room, simplify: quick, handBack } = desk.lend(raster);
      expect(quick).not.toBe(simplify);
      spoil(room, room.mark());
      const own = {
        width,
        height,
        red: room.floats(width * height),
        green: room.floats(width * height),
        blue: room.floats(width * height),
      };
      for (const name of ['red', 'green', 'blue'] as const) own[name].set(raster[name]);
      const found = runToEnd(quick(own, 3));
      for (const name of ['lightness', 'a', 'b'] as const) expect(found[name]).toEqual(plain[name]);
      for (const name of ['red', 'green', 'blue'] as const) expect(own[name]).toEqual(raster[name]);
      handBack();
    }
  },
);

test('a reading is the same with plain tools and in a room that was used before', async () => {
  const { raster, clipped } = await opened(photographs[0] as string, 401);
  const desk = new ReadingDesk();
  const read = (tools?: ReturnType<ReadingDesk['lend']>) =>
    readPicture(
      {
        raster,
        clipped,
        sheet: { widthMm: 381, heightMm: (381 * raster.height) / raster.width },
        wishes: {},
        darkest: 25,
        paper: 95,
        ...(tools && { tools }),
      },
      async () => {},
    );
  const plain = await read();
  for (let round = 0; round < 2; round++) {
    const tools = desk.lend(raster);
    spoil(tools.room, tools.room.mark());
    const found = await read(tools);
    tools.handBack();
    expect(found).toEqual(plain);
    for (const map of [found.slotMap, found.bandMap, found.lightnessMap]) {
      expect(map.buffer).not.toBe(tools.room.buffer);
    }
  }
});

test('who reads while another does has a memory of its own; a larger picture has a larger one', () => {
  const desk = new ReadingDesk();
  const size = { width: 64, height: 48 };
  const one = desk.lend(size);
  const other = desk.lend(size);
  expect(other.room.buffer).not.toBe(one.room.buffer);
  one.handBack();
  expect(desk.lend(size).room.buffer).toBe(one.room.buffer);
  one.handBack();
  const large = desk.lend({ width: 640, height: 480 });
  expect(large.room.buffer.byteLength).toBeGreaterThan(one.room.buffer.byteLength);
  large.handBack();
  desk.clear();
  expect(desk.lend(size).room.buffer).not.toBe(large.room.buffer);
});

test('where there is no WebAssembly, or none with vectors, plain loops do it', () => {
  const size = { width: 4, height: 4 };
  vi.stubGlobal('WebAssembly', undefined);
  expect(new ReadingDesk().lend(size).simplify).toBe(simplify);
  vi.stubGlobal('WebAssembly', {
    Module: class {
      constructor() {
        throw new Error('invalid opcode 0xfd');
      }
    },
  });
  expect(new ReadingDesk().lend(size).simplify).toBe(simplify);
});

test('where there is no memory for it, plain loops do it', () => {
  const { Module } = WebAssembly;
  class Memory {
    constructor() {
      throw new RangeError('could not allocate memory');
    }
  }
  vi.stubGlobal('WebAssembly', { Module, Memory });
  const tools = new ReadingDesk().lend({ width: 4, height: 4 });
  expect(tools.simplify).toBe(simplify);
  expect(tools.room.floats(3)).toEqual(new Float32Array(3));
});
