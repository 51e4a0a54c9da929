import type { PixelSize } from '../../../app/model/pixel-size.ts';

/** Neighbours stand in this order, row by row; the way back of direction d is 7 - d. */
const right = Int8Array.of(-1, 0, 1, -1, 1, -1, 0, 1);
const down = Int8Array.of(-1, -1, -1, 0, 0, 1, 1, 1);

/** By direction: 1 where it runs from corner to corner. */
export const slanting = right.map((dx, direction) => (dx !== 0 && down[direction] !== 0 ? 1 : 0));

/** The cells whose side is open, numbered from 0, and what lies around each in eight directions. */
export interface OpenCells {
  /** Place of every open cell in the picture. */
  readonly cells: Int32Array;
  /** Per open cell and direction: the place there, -1 beyond the picture. */
  readonly around: Int32Array;
  /** Per open cell and direction: the number of the open cell there, -1 for none. */
  readonly nodes: Int32Array;
}

const isOpen = 2;

/** `known` holds 2 for open cells. */
export function openCells(known: Uint8Array, { width, height }: PixelSize): OpenCells {
  const numbers = new Int32Array(known.length).fill(-1);
  let count = 0;
  for (let i = 0; i < known.length; i++) if (known[i] === isOpen) numbers[i] = count++;
  const cells = new Int32Array(count);
  const around = new Int32Array(count * 8).fill(-1);
  const nodes = new Int32Array(count * 8).fill(-1);
  for (let i = 0; i < known.length; i++) {
    const node = numbers[i] as number;
    if (node < 0) continue;
    cells[node] = i;
    const x = i % width;
    const y = Math.floor(i / width);
    for (let direction = 0; direction < 8; direction++) {
      const column = x + (right[direction] as number);
      const row = y + (down[direction] as number);
      if (column < 0 || column >= width || row < 0 || row >= height) continue;
      const other = row * width + column;
      around[node * 8 + direction] = other;
      nodes[node * 8 + direction] = numbers[other] as number;
    }
  }
  return { cells, around, nodes };
}
