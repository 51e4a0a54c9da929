import { afterEach, expect, test, vi } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import type { LinearRaster } from '../../../../app/core/raster/linear-raster.ts';
import { simplify } from '../../../../app/core/raster/simplify.ts';
import { chooseSimplify, quickSimplify } from '../../../../workers/kernels/wasm-simplify.ts';
import { opened, painted, photographs } from '../../../support/reading/rasters.ts';
import { seeded } from '../../../support/reading/seeded.ts';

afterEach(() => vi.unstubAllGlobals());

function expectAlike(raster: LinearRaster, pxPerMm: number): void {
  expect(quickSimplify).not.toBe(simplify);
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

test('where there is no WebAssembly, or none with vectors, plain loops do it', () => {
  vi.stubGlobal('WebAssembly', undefined);
  expect(chooseSimplify()).toBe(simplify);
  vi.stubGlobal('WebAssembly', {
    Module: class {
      constructor() {
        throw new Error('invalid opcode 0xfd');
      }
    },
  });
  expect(chooseSimplify()).toBe(simplify);
});
