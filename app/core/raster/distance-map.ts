import type { PixelSize } from './size.ts';

/**
 * Distance in cells from every cell to the nearest one that holds `value`, by two sweeps with steps
 * of 1 and sqrt 2 (chamfer distance; Borgefors, 'Distance Transformations in Digital Images', 1986;
 * at most 8 % long). Infinity where there is none.
 */
export function chamferDistances(
  map: Uint8Array,
  value: number,
  { width, height }: PixelSize,
): Float32Array {
  const far = Float32Array.from(map, (own) => (own === value ? 0 : Number.POSITIVE_INFINITY));
  const look = (i: number, x: number, y: number, dx: number, dy: number): void => {
    if (x + dx < 0 || x + dx >= width || y + dy < 0 || y + dy >= height) return;
    const way = far[i + dy * width + dx] + (dx !== 0 && dy !== 0 ? Math.SQRT2 : 1);
    if (way < far[i]) far[i] = way;
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (far[i] === 0) continue;
      look(i, x, y, -1, 0);
      look(i, x, y, -1, -1);
      look(i, x, y, 0, -1);
      look(i, x, y, 1, -1);
    }
  }
  for (let y = height - 1, i = far.length - 1; y >= 0; y--) {
    for (let x = width - 1; x >= 0; x--, i--) {
      if (far[i] === 0) continue;
      look(i, x, y, 1, 0);
      look(i, x, y, 1, 1);
      look(i, x, y, 0, 1);
      look(i, x, y, -1, 1);
    }
  }
  return far;
}

/**
 * Distance in px of every pixel's middle to the nearest outline of an area (1 in it, 0 elsewhere), on
 * either side; `reach` where it is that far or farther. The picture's border is no outline.
 */
export function distanceToOutline(
  area: Uint8Array,
  { width, height }: PixelSize,
  reach: number,
): Float32Array {
  const squares = new Float32Array(width * height).fill(reach * reach);
  /** Lowers the distances round a place between two pixels. */
  const stamp = (x: number, y: number): void => {
    const top = Math.max(0, Math.ceil(y - reach));
    const bottom = Math.min(height - 1, Math.floor(y + reach));
    const left = Math.max(0, Math.ceil(x - reach));
    const right = Math.min(width - 1, Math.floor(x + reach));
    for (let row = top; row <= bottom; row++) {
      const down = (row - y) * (row - y);
      for (let column = left, i = row * width + left; column <= right; column++, i++) {
        const square = down + (column - x) * (column - x);
        if (square < squares[i]) squares[i] = square;
      }
    }
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (x > 0 && area[i] !== area[i - 1]) stamp(x - 0.5, y);
      if (y > 0 && area[i] !== area[i - width]) stamp(x, y - 0.5);
    }
  }
  for (let i = 0; i < squares.length; i++) squares[i] = Math.sqrt(squares[i]);
  return squares;
}

/** 0 below 0, 1 above 1, and between them without a corner. */
export function smoothStep(t: number): number {
  const held = Math.max(0, Math.min(1, t));
  return held * held * (3 - 2 * held);
}
