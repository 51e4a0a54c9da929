import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { SoftBlend } from '../../../app/model/soft-blend.ts';
import type { SoftEdge } from './soft-edges.ts';
import { softSeeds } from './soft-seeds.ts';

/** A pixel takes a nearer place only if it is nearer by more than this, so that rounding ends. */
const nearerBy = 1e-4;

/**
 * For every pixel the nearest place of an edge of its own slot (counted from 1; 0 for none within
 * reach), and the square of its distance as a part of the edge's reach. Pixels hand their place on to
 * those beside them of the same slot, never across another shape.
 */
function nearestPlaces(slots: Uint8Array, size: PixelSize, edges: readonly SoftEdge[]) {
  const { width, height } = size;
  const { count, x: seedX, y: seedY, perReach2, edges: edgeOf } = softSeeds(edges);
  const nearest = new Uint32Array(slots.length);
  const away2 = new Float32Array(slots.length).fill(1);
  const isWaiting = new Uint8Array(slots.length);
  // A pixel waits once at most: the ring never holds more than all of them.
  const ring = new Uint32Array(slots.length + 1);
  let [head, tail] = [0, 0];

  function offer(pixel: number, x: number, y: number, seed: number): void {
    const dx = x + 0.5 - (seedX[seed] as number);
    const dy = y + 0.5 - (seedY[seed] as number);
    const away = (dx * dx + dy * dy) * (perReach2[seed] as number);
    if (away >= (away2[pixel] as number) - nearerBy) return;
    away2[pixel] = away;
    nearest[pixel] = seed + 1;
    if (isWaiting[pixel] === 1) return;
    isWaiting[pixel] = 1;
    ring[tail++] = pixel;
    if (tail === ring.length) tail = 0;
  }

  /** Each place is offered to the pixels of its two slots right beside it. */
  for (let seed = 0; seed < count; seed++) {
    const { a, b } = edges[edgeOf[seed] as number] as SoftEdge;
    const left = Math.floor(seedX[seed] as number);
    const top = Math.floor(seedY[seed] as number);
    for (let y = Math.max(0, top - 1); y <= Math.min(height - 1, top + 1); y++) {
      for (let x = Math.max(0, left - 1); x <= Math.min(width - 1, left + 1); x++) {
        const slot = slots[y * width + x];
        if (slot === a || slot === b) offer(y * width + x, x, y, seed);
      }
    }
  }
  while (head !== tail) {
    const pixel = ring[head++] as number;
    if (head === ring.length) head = 0;
    isWaiting[pixel] = 0;
    const seed = (nearest[pixel] as number) - 1;
    const slot = slots[pixel];
    const y = (pixel / width) | 0;
    const x = pixel - y * width;
    if (x > 0 && slots[pixel - 1] === slot) offer(pixel - 1, x - 1, y, seed);
    if (x < width - 1 && slots[pixel + 1] === slot) offer(pixel + 1, x + 1, y, seed);
    if (y > 0 && slots[pixel - width] === slot) offer(pixel - width, x, y - 1, seed);
    if (y < height - 1 && slots[pixel + width] === slot) offer(pixel + width, x, y + 1, seed);
  }
  return { nearest, away2, edgeOf };
}

/**
 * Where the colours of a slot map run into each other. On the edge itself both sides are half and half;
 * from there the other's share falls evenly to nothing at the edge's reach. Beyond it, and at crisp
 * edges, nothing changes. `slots` holds a slot for every pixel, row by row.
 */
export function softBlend(
  slots: Uint8Array,
  size: PixelSize,
  edges: readonly SoftEdge[],
): SoftBlend {
  if (slots.length !== size.width * size.height)
    throw new RangeError('slots must hold one number a pixel');
  const { nearest, away2, edgeOf } = nearestPlaces(slots, size, edges);
  let count = 0;
  for (let i = 0; i < nearest.length; i++) if (nearest[i] !== 0) count++;
  const pixels = new Uint32Array(count);
  const partners = new Uint8Array(count);
  const shares = new Uint8Array(count);
  for (let pixel = 0, at = 0; pixel < nearest.length; pixel++) {
    const place = nearest[pixel] as number;
    if (place === 0) continue;
    const { a, b } = edges[edgeOf[place - 1] as number] as SoftEdge;
    pixels[at] = pixel;
    partners[at] = slots[pixel] === a ? b : a;
    shares[at++] = Math.max(1, Math.round(128 * (1 - Math.sqrt(away2[pixel] as number))));
  }
  return { pixels, partners, shares };
}
