import { paintStroke } from '../../raster/paint-stroke.ts';
import type { PixelSize } from '../../raster/size.ts';
import { cutLine, cutSide } from './cut-line.ts';
import type { SubjectStroke } from './subject.ts';
import { type ColourBytes, type ColourGrid, colourBinAt } from './subject-colours.ts';

/** Cells on either side of the line stay open, the others are what they are. */
function nearLine({ sides, cells }: CloseUp): Uint8Array {
  const { width, height } = cells;
  const known = sides.map((side) => (side === 1 ? cutSide.subject : cutSide.ground));
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      for (const other of [x + 1 < width ? i + 1 : i, y + 1 < height ? i + width : i]) {
        if (sides[i] === sides[other]) continue;
        known[i] = cutSide.open;
        known[other] = cutSide.open;
      }
    }
  }
  return known;
}

/** What her corrections say of every pixel: what was painted last counts, unpainted ones are open. */
function painted({ strokes, colours: { size } }: CloseUp): Uint8Array {
  const seeds = new Uint8Array(size.width * size.height).fill(cutSide.open);
  for (const { mode, path, brush } of strokes) {
    const radius = Math.max(0.75, (brush * Math.max(size.width, size.height)) / 2);
    paintStroke(seeds, size, path, radius, mode === 'add' ? cutSide.subject : cutSide.ground);
  }
  return seeds;
}

/**
 * The line at full size: within the cells along the coarse one it is cut once more, pixel by pixel
 * (after Lombaert, Sun, Grady, Xu, 'A Multilevel Banded Graph Cuts Method', 2005). Answers 1 for subject. `favour`: by
 * colour bin, see `learnedFavour`.
 */
export function refineLine(near: CloseUp, favour: Float32Array): Uint8Array {
  const { colours, cellPx } = near;
  const cells = nearLine(near);
  const known = painted(near); // filled in where she painted nothing
  const { width, height } = colours.size;
  for (let y = 0, i = 0; y < height; y++) {
    const row = Math.floor(y / cellPx) * near.cells.width;
    for (let x = 0; x < width; x++, i++) {
      if (known[i] === cutSide.open) known[i] = cells[row + Math.floor(x / cellPx)];
    }
  }
  const favourAt = (i: number): number => favour[colourBinAt(colours, i)];
  cutLine({ colours, known, favourAt });
  return known;
}

/** The part of a picture the subject lies in, and as much of the grid: most work is done in it alone. */
interface CloseUp {
  readonly colours: ColourBytes;
  /** 1 for subject, per cell of this part. */
  readonly sides: Uint8Array;
  readonly cells: PixelSize;
  readonly cellPx: number;
  readonly strokes: readonly SubjectStroke[];
  /** Where it lies in the picture, px. */
  readonly left: number;
  readonly top: number;
}

interface Box extends PixelSize {
  readonly left: number;
  readonly top: number;
}

/** Cells of ground left round the subject. */
const margin = 2;

function boxOf(sides: Uint8Array, { width, height }: PixelSize): Box {
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (sides[i] !== 1) continue;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = y;
    }
  }
  left = Math.max(0, left - margin);
  top = Math.max(0, top - margin);
  right = Math.min(width - 1, right + margin);
  bottom = Math.min(height - 1, bottom + margin);
  return { left, top, width: right - left + 1, height: bottom - top + 1 };
}

function cut<T extends Uint8Array | Uint8ClampedArray | Int8Array>(
  from: T,
  width: number,
  box: Box,
  into: T,
): T {
  for (let y = 0; y < box.height; y++) {
    const start = (box.top + y) * width + box.left;
    into.set(from.subarray(start, start + box.width), y * box.width);
  }
  return into;
}

/** Null where there is no subject cell at all. */
export function closeUp(
  colours: ColourBytes,
  { size: gridSize, cellPx }: ColourGrid,
  sides: Uint8Array,
  strokes: readonly SubjectStroke[],
): CloseUp | null {
  if (!sides.includes(1)) return null;
  const { width, height } = colours.size;
  const cells = boxOf(sides, gridSize);
  const left = cells.left * cellPx;
  const top = cells.top * cellPx;
  const size = {
    width: Math.min(width - left, cells.width * cellPx),
    height: Math.min(height - top, cells.height * cellPx),
  };
  const box = { ...size, left, top };
  const px = size.width * size.height;
  const inBox = Math.max(width, height) / Math.max(size.width, size.height);
  return {
    colours: {
      size,
      lightness: cut(colours.lightness, width, box, new Uint8ClampedArray(px)),
      a: cut(colours.a, width, box, new Int8Array(px)),
      b: cut(colours.b, width, box, new Int8Array(px)),
    },
    sides: cut(sides, gridSize.width, cells, new Uint8Array(cells.width * cells.height)),
    cells,
    cellPx,
    strokes: strokes.map(({ mode, path, brush }) => ({
      mode,
      brush: brush * inBox,
      path: path.map(
        ([x, y]) => [(x * width - left) / size.width, (y * height - top) / size.height] as const,
      ),
    })),
    left,
    top,
  };
}

/** A mask of the close-up as one of the whole picture; ground all round. */
export function fromCloseUp(
  mask: Uint8Array,
  near: CloseUp,
  { width, height }: PixelSize,
): Uint8Array {
  const whole = new Uint8Array(width * height);
  const { size } = near.colours;
  for (let y = 0; y < size.height; y++) {
    const row = mask.subarray(y * size.width, (y + 1) * size.width);
    whole.set(row, (near.top + y) * width + near.left);
  }
  return whole;
}
