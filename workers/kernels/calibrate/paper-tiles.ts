import type { Point } from '../../../app/model/lab.ts';
import { blueShare, greenShare, redShare } from '../pixels/lightness.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';

/** The brighter part of one small area of the photo. */
export interface Tile {
  /** Where that was seen, shares of the photo's sides. */
  readonly place: Point;
  /** Natural logarithms of linear red, green, blue. */
  readonly logs: readonly [number, number, number];
  /** Natural logarithm of its luminance. */
  readonly logLuminance: number;
}

const tilesAcross = 20;
/** Bare paper shows in the brightest part of a tile; single bright pixels are noise. */
const brighterShare = 0.75;
const dark = 1e-4;

/** Tiles of a raster, each with the pixel that three quarters of it are darker than. */
export function paperTiles({ width, height, red, green, blue }: LinearRaster): Tile[] {
  const side = Math.max(2, Math.floor(Math.max(width, height) / tilesAcross));
  const tiles: Tile[] = [];
  const luminance = new Float64Array(side * side);
  for (let top = 0; top + side <= height; top += side) {
    for (let left = 0; left + side <= width; left += side) {
      const pixel = (n: number): number => (top + Math.floor(n / side)) * width + left + (n % side);
      for (let n = 0; n < side * side; n++) {
        const p = pixel(n);
        luminance[n] =
          redShare * (red[p] as number) +
          greenShare * (green[p] as number) +
          blueShare * (blue[p] as number);
      }
      const chosen = luminance.slice().sort()[Math.floor(brighterShare * side * side)] as number;
      const at = pixel(luminance.indexOf(chosen));
      const log = (plane: Float32Array): number => Math.log(Math.max(dark, plane[at] as number));
      tiles.push({
        place: [((at % width) + 0.5) / width, (Math.floor(at / width) + 0.5) / height],
        logs: [log(red), log(green), log(blue)],
        logLuminance: Math.log(Math.max(dark, chosen)),
      });
    }
  }
  return tiles;
}
