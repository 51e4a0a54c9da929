import { describe, expect, test } from 'vitest';
import {
  paperLight,
  paperTiles,
  type Tile,
} from '../../../../../app/core/paint/measure/paper-light.ts';
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

describe('bare paper in even light', () => {
  /** A hundred tiles of ten by ten: luminance and logarithms e to the power of what is written. */
  const tilesOf = (at: (n: number) => { readonly light?: number; readonly red?: number }): Tile[] =>
    Array.from({ length: 100 }, (_, n) => {
      const { light = 0, red = 0 } = at(n);
      return {
        place: [((n % 10) + 0.5) / 10, (Math.floor(n / 10) + 0.5) / 10] as const,
        logs: [light + red, light, light] as const,
        logLuminance: light,
      };
    });
  const isTaken = (tiles: readonly Tile[], n: number): boolean | undefined =>
    paperLight(tiles)?.paper.includes(tiles[n] as Tile);

  // One tile of a hundred hardly moves the plane: by a hundredth of how far it strays, and only while it counts.
  test.each([
    ['darker by 5.5 %', { light: -0.055 }, true],
    ['darker by 6.5 %', { light: -0.065 }, false],
    ['lighter by 11 %, as light may be added', { light: 0.11 }, true],
    ['lighter by 13 %', { light: 0.13 }, false],
    ['redder by 3.7 %', { red: 0.037 }, true],
    ['redder by 4.3 %', { red: 0.043 }, false],
    ['less red by 3.7 %', { red: -0.037 }, true],
    ['less red by 4.3 %', { red: -0.043 }, false],
    ['a shadow', { light: -1 }, false],
  ])('a tile %s: %o, taken for paper: %s', (_, odd, taken) => {
    const tiles = tilesOf((n) => (n === 44 ? odd : {}));
    expect(isTaken(tiles, 44)).toBe(taken);
    expect(paperLight(tiles)?.paper).toHaveLength(taken ? 100 : 99);
  });

  test('paper that strays to either side is all of it paper: 5 % of light, 3 % of colour', () => {
    // Taken too strictly at first, one half would be lost and the plane would lie along the other.
    const lightly = tilesOf((n) => ({ light: (n + Math.floor(n / 10)) % 2 ? 0.05 : -0.05 }));
    expect(paperLight(lightly)?.paper).toHaveLength(100);
    const redly = tilesOf((n) => ({ red: (n + Math.floor(n / 10)) % 2 ? 0.03 : -0.03 }));
    expect(paperLight(redly)?.paper).toHaveLength(100);
  });

  test('light that falls off over the sheet is followed in every channel', () => {
    const tiles = tilesOf(() => ({})).map((tile): Tile => {
      const [x, y] = [tile.place[0] - 0.5, tile.place[1] - 0.5];
      const logs = [0.3 * x - 0.2 * y, 0.25 * x - 0.2 * y, 0.25 * x - 0.25 * y - 0.1] as const;
      return { ...tile, logs, logLuminance: 0.26 * x - 0.21 * y };
    });
    const light = paperLight(tiles);
    expect(light?.paper).toHaveLength(100);
    const wanted = [
      [0, 0.3, -0.2],
      [0, 0.25, -0.2],
      [-0.1, 0.25, -0.25],
    ];
    // What closes an open tilt holds a tilt back by about a hundredth.
    light?.planes.forEach((plane, c) => {
      plane.forEach((own, i) => {
        expect(Math.abs(own - (wanted[c]?.[i] ?? 0))).toBeLessThan(0.005);
      });
    });
  });

  test('is sought from the brightest tenth on, wherever it lies: not from a dark board, nor from a glint', () => {
    // Fifteen tiles of a dark board come first, five glints last.
    const tiles = tilesOf((n) => (n < 15 ? { light: -1 } : n < 95 ? {} : { light: 0.8 }));
    expect(paperLight(tiles)?.paper).toEqual(tiles.slice(15, 95));
  });

  test('is at least 6 % of the tiles, and three of them', () => {
    // Every tile but some is a colour of its own, far from every other.
    const fewOf = (count: number) =>
      tilesOf((n) => (n < count ? {} : { light: -1 - n / 5, red: n % 2 ? n : -n }));
    expect(paperLight(fewOf(5))).toBeNull();
    expect(paperLight(fewOf(12))?.paper).toHaveLength(12);
    expect(paperLight(fewOf(12), 0.13)).toBeNull();
    expect(paperLight([])).toBeNull();
    expect(paperLight(tilesOf(() => ({})).slice(0, 2))).toBeNull();
    expect(paperLight(tilesOf(() => ({})).slice(0, 3))?.paper).toHaveLength(3);
  });
});
