import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { SubjectStroke } from '../../../app/model/subject.ts';
import { labelShapes } from '../shapes/label-shapes.ts';

/** Holes and parts smaller than this square are not worth a line of their own, mm. */
const smallestMm = 2;
/** A part this much smaller than the largest one is stray. */
const leastOfLargest = 0.04;

/** Labels of the shapes that a correction of that mode runs through: hers, however small. */
function touched(
  corrections: readonly SubjectStroke[],
  mode: SubjectStroke['mode'],
  labels: Int32Array,
  { width, height }: PixelSize,
): Set<number> {
  const found = new Set<number>();
  for (const stroke of corrections) {
    if (stroke.mode !== mode) continue;
    for (const [x, y] of stroke.path) {
      const column = Math.floor(x * width);
      const row = Math.floor(y * height);
      if (column < 0 || row < 0 || column >= width || row >= height) continue;
      found.add(labels[row * width + column] as number);
    }
  }
  return found;
}

/** One or few parts without small holes, in place; what she painted herself stays. */
export function* cleanSubject(
  mask: Uint8Array,
  size: PixelSize,
  pxPerMm: number,
  corrections: readonly SubjectStroke[],
): Generator<void> {
  const { labels, kinds, areasPx } = yield* labelShapes(mask, size);
  yield;
  const smallestPx = (smallestMm * pxPerMm) ** 2;
  const largest = areasPx.reduce(
    (most, area, i) => (kinds[i] === 1 ? Math.max(most, area) : most),
    0,
  );
  const added = touched(corrections, 'add', labels, size);
  const taken = touched(corrections, 'take', labels, size);
  const turned = areasPx.map((area, shape) => {
    if (kinds[shape] === 1) {
      const stray = area < Math.max(smallestPx, leastOfLargest * largest) && area < largest;
      return stray && !added.has(shape) ? 1 : 0;
    }
    return area < smallestPx && !taken.has(shape) ? 1 : 0;
  });
  for (let i = 0; i < mask.length; i++) {
    if (turned[labels[i] as number] === 1) mask[i] = 1 - (mask[i] as number);
  }
}
