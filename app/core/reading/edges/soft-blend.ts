import type { Point } from '../../colour/lab.ts';
import type { SoftBlend } from '../../raster/paint-slots.ts';
import type { PixelSize } from '../../raster/size.ts';
import { type Edge, edgeLimits, kindOnSheet } from './edge.ts';

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
    const dx = x + 0.5 - seedX[seed];
    const dy = y + 0.5 - seedY[seed];
    const away = (dx * dx + dy * dy) * perReach2[seed];
    if (away >= away2[pixel] - nearerBy) return;
    away2[pixel] = away;
    nearest[pixel] = seed + 1;
    if (isWaiting[pixel] === 1) return;
    isWaiting[pixel] = 1;
    ring[tail++] = pixel;
    if (tail === ring.length) tail = 0;
  }

  /** Each place is offered to the pixels of its two slots right beside it. */
  for (let seed = 0; seed < count; seed++) {
    const { a, b } = edges[edgeOf[seed]];
    const left = Math.floor(seedX[seed]);
    const top = Math.floor(seedY[seed]);
    for (let y = Math.max(0, top - 1); y <= Math.min(height - 1, top + 1); y++) {
      for (let x = Math.max(0, left - 1); x <= Math.min(width - 1, left + 1); x++) {
        const slot = slots[y * width + x];
        if (slot === a || slot === b) offer(y * width + x, x, y, seed);
      }
    }
  }
  while (head !== tail) {
    const pixel = ring[head++];
    if (head === ring.length) head = 0;
    isWaiting[pixel] = 0;
    const seed = nearest[pixel] - 1;
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
  for (let pixel = 0, entry = 0; pixel < nearest.length; pixel++) {
    const place = nearest[pixel];
    if (place === 0) continue;
    const { a, b } = edges[edgeOf[place - 1]];
    pixels[entry] = pixel;
    partners[entry] = slots[pixel] === a ? b : a;
    shares[entry++] = Math.max(1, Math.round(128 * (1 - Math.sqrt(away2[pixel]))));
  }
  return { pixels, partners, shares };
}

/** Places along soft edges, about one a px: what a pixel measures its distance to. All in px. */
interface SoftSeeds {
  readonly count: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** 1 over the square of the edge's reach. */
  readonly perReach2: Float32Array;
  /** Index of the edge a place belongs to. */
  readonly edges: Uint32Array;
}

const stepsBetween = (
  [fromX, fromY]: readonly [number, number],
  [toX, toY]: readonly [number, number],
): number => Math.max(1, Math.ceil(Math.hypot(toX - fromX, toY - fromY)));

function softSeeds(edges: readonly SoftEdge[]): SoftSeeds {
  let room = 0;
  for (const { path } of edges)
    path.forEach((to, n) => {
      room += n === 0 ? 1 : stepsBetween(path[n - 1] ?? to, to);
    });
  const x = new Float32Array(room);
  const y = new Float32Array(room);
  const perReach2 = new Float32Array(room);
  const indices = new Uint32Array(room);
  let count = 0;
  edges.forEach(({ path, reachPx }, index) => {
    path.forEach((to, n) => {
      const from = path[n - 1] ?? to;
      const steps = n === 0 ? 1 : stepsBetween(from, to);
      for (let k = 1; k <= steps; k++) {
        x[count] = from[0] + (k / steps) * (to[0] - from[0]);
        y[count] = from[1] + (k / steps) * (to[1] - from[1]);
        perReach2[count] = 1 / (reachPx * reachPx);
        indices[count++] = index;
      }
    });
  });
  return { count, x, y, perReach2, edges: indices };
}

/** An edge to be drawn soft, in px of the picture. */
interface SoftEdge {
  readonly a: number;
  readonly b: number;
  /** As far as this to either side the two colours mix. */
  readonly reachPx: number;
  /** In px from the upper left. */
  readonly path: readonly Point[];
}

/**
 * Width from 10 to 90 % of an edge that was sharp and is softened with a damp brush, as a share of the
 * long side (own: the middle of 'soften with a damp brush', 0.6 to 2 %).
 */
export const softenedShare = 0.012;

/** An even rise from 0 to 1 spends 0.8 of its way between 10 and 90 %. */
const rampOfWidth = 1 / 0.8;

/** Width a border has on the sheet, 10 to 90 %, as a share of the long side; 0 where it is crisp. */
function softShare(edge: Edge): number {
  switch (kindOnSheet(edge)) {
    case 'soft':
      return edge.wish === 'soften' ? Math.max(edge.widthShare, softenedShare) : edge.widthShare;
    case 'lost': // both sides in one wash, run together; how far can't be measured where little is seen
      return Math.min(edgeLimits.graded, Math.max(edge.widthShare, softenedShare));
    default:
      return 0;
  }
}

/** The edges of a picture that are soft or lost on the sheet, at their measured width. */
export function softEdges(edges: readonly Edge[], { width, height }: PixelSize): SoftEdge[] {
  const longSide = Math.max(width, height);
  return edges.flatMap((edge) => {
    const reachPx = (softShare(edge) * longSide * rampOfWidth) / 2;
    if (reachPx <= 0) return [];
    const { a, b } = edge;
    return [{ a, b, reachPx, path: edge.path.map(([x, y]): Point => [x * width, y * height]) }];
  });
}
