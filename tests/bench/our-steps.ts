// Our kernels, called as the reading calls them but without pauses.
import type { PixelSize } from '../../app/model/reference.ts';
import { edgePreserving } from '../../workers/kernels/pixels/edge-preserving.ts';
import { gradient } from '../../workers/kernels/pixels/gradient.ts';
import { lightnessOfRgba } from '../../workers/kernels/pixels/lightness-of-rgba.ts';
import { mergeSmall } from '../../workers/kernels/shapes/merge-small.ts';
import { bandMapOf } from '../../workers/kernels/values/band-map.ts';
import { lightnessHistogram } from '../../workers/kernels/values/histogram.ts';
import { optimalBands } from '../../workers/kernels/values/optimal-bands.ts';
import type { PhotoBytes } from './bench.ts';

function toEnd<T>(pieces: Generator<void, T>): T {
  for (;;) {
    const piece = pieces.next();
    if (piece.done) return piece.value;
  }
}

/** Into `plane` where one is given: work space is kept, as for one picture after another. */
export function ourLightness(
  { width, height, rgba }: PhotoBytes,
  plane = new Float32Array(width * height),
): Float32Array {
  lightnessOfRgba(rgba, plane);
  return plane;
}

/** Brush scale of a quarter sheet, 2 mm at 4.2 px a mm; see kernels/pixels/simplify.ts. */
export function ourSmoothing(lightness: Float32Array, size: PixelSize): Float32Array {
  const smooth = lightness.slice();
  toEnd(edgePreserving([smooth], [smooth], size, { spacePx: 8.4, tone: 8 }));
  return smooth;
}

export function ourBands(lightness: Float32Array, k: number) {
  const found = optimalBands(lightnessHistogram(lightness), k);
  return found[found.length - 1] ?? { limits: [], cost: 0 };
}

export const ourBandMap = bandMapOf;

/** Merges in place; the map is handed back. */
export function ourMasses(bands: Uint8Array, size: PixelSize, leastPx: number): Uint8Array {
  const rule = {
    leastPx: new Float64Array(8).fill(leastPx),
    difference: (band: number, other: number) => Math.abs(band - other),
  };
  toEnd(mergeSmall(bands, size, rule));
  return bands;
}

/** All of it: masses and slopes of one photograph. */
export function ourChain(photo: PhotoBytes, k: number, leastPx: number) {
  const lightness = ourLightness(photo);
  const smooth = ourSmoothing(lightness, photo);
  const map = ourBandMap(smooth, ourBands(smooth, k).limits);
  return { bands: ourMasses(map, photo, leastPx), slopes: gradient(lightness, photo) };
}
