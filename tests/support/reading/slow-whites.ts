import type { PixelSize } from '../../../app/core/raster/size.ts';

/** One area found the slow and obvious way. */
export interface SlowWhite {
  readonly pixels: readonly number[];
  /** Pixel sides on its outline. */
  readonly sides: number;
  /** Pixels of the greatest depth. */
  readonly deepest: readonly number[];
}

const neighbours = (i: number, { width, height }: PixelSize): (number | null)[] => [
  i % width > 0 ? i - 1 : null,
  i % width < width - 1 ? i + 1 : null,
  i >= width ? i - width : null,
  i < width * (height - 1) ? i + width : null,
];

/** Chamfer depth by asking every neighbour again until nothing changes; nothing is white outside. */
function depthsOf(mask: Uint8Array, { width, height }: PixelSize): number[] {
  const depths = Array.from(mask, (own) => (own ? Number.POSITIVE_INFINITY : 0));
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? 0 : (depths[y * width + x] as number);
  for (let changed = true; changed; ) {
    changed = false;
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        for (let dy = -1; dy <= 1; dy++) {
          for (let dx = -1; dx <= 1; dx++) {
            if (dx === 0 && dy === 0) continue;
            const depth = at(x + dx, y + dy) + (dx !== 0 && dy !== 0 ? 4 : 3);
            if (depth >= at(x, y)) continue;
            depths[y * width + x] = depth;
            changed = true;
          }
        }
      }
    }
  }
  return depths;
}

/** The connected areas of 1 in a mask, in reading order of their first pixels. */
export function slowWhites(mask: Uint8Array, size: PixelSize): SlowWhite[] {
  const depths = depthsOf(mask, size);
  const seen = new Set<number>();
  const whites: SlowWhite[] = [];
  for (let first = 0; first < mask.length; first++) {
    if (!mask[first] || seen.has(first)) continue;
    const pixels = [first];
    seen.add(first);
    for (const pixel of pixels) {
      for (const other of neighbours(pixel, size)) {
        if (other === null || !mask[other] || seen.has(other)) continue;
        seen.add(other);
        pixels.push(other);
      }
    }
    const sides = pixels
      .flatMap((pixel) => neighbours(pixel, size))
      .filter((other) => other === null || !mask[other]).length;
    const most = Math.max(...pixels.map((pixel) => depths[pixel] as number));
    whites.push({ pixels, sides, deepest: pixels.filter((pixel) => depths[pixel] === most) });
  }
  return whites;
}
