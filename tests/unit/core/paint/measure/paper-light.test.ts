import { expect, test } from 'vitest';
import { paperTiles } from '../../../../../app/core/paint/measure/paper-light.ts';
import { emptyRaster } from '../../../../../app/core/raster/linear-raster.ts';

test('a tile tells of the pixel of its own that three quarters of it are darker than', () => {
  // Twenty tiles of 2 x 2 px across; in each the four pixels have 1/4, 2/4, 3/4 and all of the tile's light.
  const raster = emptyRaster(40, 4);
  for (let i = 0; i < 160; i++) {
    const [x, y] = [i % 40, Math.floor(i / 40)];
    const tile = 1 + Math.floor(x / 2);
    const light = (tile / 20) * ((1 + (x % 2) + 2 * (y % 2)) / 4);
    raster.red[i] = light;
    raster.green[i] = light;
    raster.blue[i] = light;
  }
  const tiles = paperTiles(raster);
  expect(tiles).toHaveLength(40);
  for (const [n, { place, logs }] of tiles.entries()) {
    const column = n % 20;
    const [x, y] = [place[0] * 40, place[1] * 4];
    expect(Math.floor(x / 2)).toBe(column);
    expect(Math.floor(y / 2)).toBe(Math.floor(n / 20));
    expect([Math.floor(x) % 2, Math.floor(y) % 2]).toEqual([1, 1]); // the lightest of four
    for (const log of logs) expect(log).toBeCloseTo(Math.log((column + 1) / 20), 5);
  }
});
