import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { labelRuns, type RunLabels } from '../shapes/label-shapes.ts';

/** The connected areas of a mask of 0 and 1; what is said of an area stands at its shape's number. */
export interface WhiteAreas {
  readonly labels: RunLabels;
  /** Outline in px, straightened as in `shapeFacts`: pixel sides times pi / 4. */
  readonly outlinesPx: Float64Array;
  /** Centre of gravity, px. */
  readonly centresX: Float64Array;
  readonly centresY: Float64Array;
}

/** Areas hold together by the four sides of pixels. The picture's own border counts as outline. */
export function* whiteAreas(mask: Uint8Array, size: PixelSize): Generator<void, WhiteAreas> {
  const labels = yield* labelRuns(mask, size);
  yield;
  const { runs, meetings, shapes, kinds, areasPx } = labels;
  const { starts } = runs;
  const sides = new Float64Array(kinds.length);
  const sumsX = new Float64Array(kinds.length);
  const sumsY = new Float64Array(kinds.length);
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run] as number;
    if (kinds[shape] === 0) continue;
    const start = starts[run] as number;
    const length = (starts[run + 1] as number) - start;
    const y = Math.floor(start / size.width);
    sides[shape] = (sides[shape] as number) + 2 + 2 * length;
    sumsX[shape] = (sumsX[shape] as number) + length * (start - y * size.width + (length - 1) / 2);
    sumsY[shape] = (sumsY[shape] as number) + length * y;
  }
  // Where two runs of one area meet, neither has outline.
  for (let n = 0; n < meetings.count; n++) {
    const shape = shapes[meetings.uppers[n] as number] as number;
    if (shape !== shapes[meetings.lowers[n] as number]) continue;
    sides[shape] = (sides[shape] as number) - 2 * (meetings.sides[n] as number);
  }
  const mean = (sum: number, shape: number): number => sum / (areasPx[shape] as number);
  return {
    labels,
    outlinesPx: sides.map((count) => (count * Math.PI) / 4),
    centresX: sumsX.map(mean),
    centresY: sumsY.map(mean),
  };
}

/** The area a pixel of the mask belongs to. */
export function areaAt({ labels }: WhiteAreas, { width }: PixelSize, pixel: number): number {
  const { starts, rows } = labels.runs;
  const y = Math.floor(pixel / width);
  let low = rows[y] as number;
  let high = (rows[y + 1] as number) - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] as number) <= pixel) low = middle;
    else high = middle - 1;
  }
  return labels.shapes[low] as number;
}
