import type { PixelSize } from './size.ts';

/**
 * Size of the gradient of a plane, in its unit per px: 3 x 3 derivative with weights 1 2 1 (common
 * practice after Sobel, Feldman 1968), divided by 8. Beyond the border the border pixel goes on.
 */
export function gradient(plane: Float32Array, { width, height }: PixelSize): Float32Array {
  const sizes = new Float32Array(plane.length);
  const right = width - 1;
  for (let y = 0; y < height; y++) {
    const above = Math.max(0, y - 1) * width;
    const own = y * width;
    const below = Math.min(height - 1, y + 1) * width;
    // Column sums 1 2 1 and differences slide along the row: left, here, next.
    let leftSum = plane[above] + 2 * plane[own] + plane[below];
    let sum = leftSum;
    let leftStep = plane[below] - plane[above];
    let step = leftStep;
    for (let x = 0; x < width; x++) {
      const next = x < right ? x + 1 : right;
      const high = plane[above + next];
      const low = plane[below + next];
      const nextSum = high + 2 * plane[own + next] + low;
      const nextStep = low - high;
      const across = nextSum - leftSum;
      const down = leftStep + 2 * step + nextStep;
      sizes[own + x] = Math.sqrt(across * across + down * down) / 8;
      leftSum = sum;
      sum = nextSum;
      leftStep = step;
      step = nextStep;
    }
  }
  return sizes;
}
