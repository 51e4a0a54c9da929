import type { PixelSize } from '../../../app/model/pixel-size.ts';

/**
 * Distance in px of every pixel's middle to the nearest outline of an area (1 in it, 0 elsewhere), on
 * either side; `reach` where it is that far or farther. The picture's border is no outline.
 */
export function edgeDistance(
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
        if (square < (squares[i] as number)) squares[i] = square;
      }
    }
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (x > 0 && area[i] !== area[i - 1]) stamp(x - 0.5, y);
      if (y > 0 && area[i] !== area[i - width]) stamp(x, y - 0.5);
    }
  }
  for (let i = 0; i < squares.length; i++) squares[i] = Math.sqrt(squares[i] as number);
  return squares;
}
