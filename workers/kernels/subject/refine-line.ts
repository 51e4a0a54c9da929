import { paintStroke } from '../pixels/stroke-area.ts';
import type { CloseUp } from './close-up.ts';
import { colourBinAt } from './colour-model.ts';
import { cell, cutLine } from './cut-line.ts';

/** Cells on either side of the line stay open, the others are what they are. */
function nearLine({ sides, cells }: CloseUp): Uint8Array {
  const { width, height } = cells;
  const known = sides.map((side) => (side === 1 ? cell.subject : cell.ground));
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      for (const other of [x + 1 < width ? i + 1 : i, y + 1 < height ? i + width : i]) {
        if (sides[i] === sides[other]) continue;
        known[i] = cell.open;
        known[other] = cell.open;
      }
    }
  }
  return known;
}

/** What her corrections say of every pixel: what was painted last counts, unpainted ones are open. */
function painted({ strokes, colours: { size } }: CloseUp): Uint8Array {
  const seeds = new Uint8Array(size.width * size.height).fill(cell.open);
  for (const { mode, path, brush } of strokes) {
    const radius = Math.max(0.75, (brush * Math.max(size.width, size.height)) / 2);
    paintStroke(seeds, size, path, radius, mode === 'add' ? cell.subject : cell.ground);
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
      if (known[i] === cell.open) known[i] = cells[row + Math.floor(x / cellPx)] as number;
    }
  }
  const favourAt = (i: number): number => favour[colourBinAt(colours, i)] as number;
  cutLine({ colours, known, favourAt });
  return known;
}
