import { gaussianBlur } from '../../raster/gaussian-blur.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import { Room } from '../../raster/room.ts';
import type { PixelSize } from '../../raster/size.ts';

/** Mean colour of what surrounds every place, on a grid of square cells, row by row. */
export interface Surroundings {
  /** Of the planes, px. */
  readonly size: PixelSize;
  readonly pxPerMm: number;
  /** Side of a cell in px of the planes. */
  readonly cellPx: number;
  readonly grid: PixelSize;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** What is seen beside a thing at first glance: a Gaussian of this sigma on the sheet, mm (own). */
const surroundMm = 40;
/** So wide a mean needs no finer grid, mm. */
const cellMm = 5;

/** Rows of pixels between two pauses. */
const rowsPerPiece = 256;

/** Adds a line of pixels to the sums of the cells it lies in. */
function addLine(
  plane: Float32Array,
  start: number,
  width: number,
  cellPx: number,
  sums: Float64Array,
): void {
  const end = start + width;
  let column = 0;
  let i = start;
  // Written out for the cells that most pictures have: short loops take twice as long.
  if (cellPx === 2) {
    for (; i + 1 < end; i += 2) sums[column++] += plane[i] + plane[i + 1];
  } else if (cellPx === 4) {
    for (; i + 3 < end; i += 4) {
      sums[column++] += plane[i] + plane[i + 1] + plane[i + 2] + plane[i + 3];
    }
  }
  for (; i < end; column++) {
    const next = Math.min(end, i + cellPx);
    let sum = 0;
    for (; i < next; i++) sum += plane[i];
    sums[column] += sum;
  }
}

/** Means of square cells of the planes; the last ones may be cut by the border. Hands back control now and then. */
export function* cellMeans(
  planes: readonly Float32Array[],
  { width, height }: PixelSize,
  cellPx: number,
  room = new Room(),
): Generator<void, { readonly grid: PixelSize; readonly means: readonly Float32Array[] }> {
  const grid = { width: Math.ceil(width / cellPx), height: Math.ceil(height / cellPx) };
  const cells = grid.width * grid.height;
  const means = planes.map(() => room.floats(cells));
  const sums = planes.map(() => new Float64Array(grid.width));
  for (let row = 0; row < grid.height; row++) {
    const bottom = Math.min(height, (row + 1) * cellPx);
    for (const [n, plane] of planes.entries()) {
      const own = sums[n].fill(0);
      for (let y = row * cellPx; y < bottom; y++) addLine(plane, y * width, width, cellPx, own);
      const rows = bottom - row * cellPx;
      for (let column = 0; column < grid.width; column++) {
        const columns = Math.min(width, (column + 1) * cellPx) - column * cellPx;
        means[n][row * grid.width + column] = own[column] / (rows * columns);
      }
    }
    if ((row * cellPx) % rowsPerPiece < cellPx) yield;
  }
  return { grid, means };
}

/** The surroundings of every place of simplified planes of that size. Hands back control now and then. */
export function* findSurroundings(
  { a, b }: LabPlanes,
  size: PixelSize,
  pxPerMm: number,
): Generator<void, Surroundings> {
  const cellPx = Math.max(1, Math.round(cellMm * pxPerMm));
  const { grid, means } = yield* cellMeans([a, b], size, cellPx);
  yield* gaussianBlur(means, grid, (surroundMm * pxPerMm) / cellPx);
  return { size, pxPerMm, cellPx, grid, a: means[0], b: means[1] };
}
