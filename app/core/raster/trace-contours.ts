// Contours between slots, followed along the sides of pixels. Corners are counted from the picture's
// upper left; pixel (x, y) has its centre at (x + 0.5, y + 0.5). Directions 0..3: right, down, left, up.
import type { PixelSize } from './size.ts';

/** One unbroken contour between two slots: it ends where a third slot or the picture's border begins. */
export interface Contour {
  /** Lower and higher slot; going along, b lies on the side (-ty, tx) of the direction (tx, ty). */
  readonly a: number;
  readonly b: number;
  readonly closed: boolean;
  /** Corners in order, x and y in turn, px; of a closed one the first is not repeated. */
  readonly corners: Int32Array;
}

const stepX = [1, 0, -1, 0] as const;
const stepY = [0, 1, 0, -1] as const;
// Offsets, from the corner a side starts at, of the pixel on side a and of the pixel on side b.
const ownX = [0, 0, -1, -1] as const;
const ownY = [-1, 0, 0, -1] as const;
const otherX = [0, -1, -1, 0] as const;
const otherY = [0, 0, -1, -1] as const;

/** Follows contours of one slot map; sides already followed are remembered. */
class Tracing {
  readonly #slots: Uint8Array;
  readonly #width: number;
  readonly #height: number;
  /** Per pixel: bit 0, its upper side is done; bit 1, its left side. */
  readonly #done: Uint8Array;
  #corners = new Int32Array(1024);

  constructor(slots: Uint8Array, { width, height }: PixelSize) {
    this.#slots = slots;
    this.#width = width;
    this.#height = height;
    this.#done = new Uint8Array(slots.length);
  }

  isDone(pixel: number, bit: 1 | 2): boolean {
    return (this.#done[pixel] & bit) !== 0;
  }

  /** The slot of a pixel, -1 outside. */
  #slotAt(x: number, y: number): number {
    if (x < 0 || y < 0 || x >= this.#width || y >= this.#height) return -1;
    return this.#slots[y * this.#width + x];
  }

  /** Whether a side between a and b leaves this corner in that direction, with b on its proper side. */
  #leaves(x: number, y: number, way: number, a: number, b: number): boolean {
    return (
      this.#slotAt(x + (ownX[way] as number), y + (ownY[way] as number)) === a &&
      this.#slotAt(x + (otherX[way] as number), y + (otherY[way] as number)) === b
    );
  }

  #markDone(x: number, y: number, way: number): void {
    // The side as upper or left side of the pixel below or right of it.
    const column = way === 2 ? x - 1 : x;
    const row = way === 3 ? y - 1 : y;
    const at = row * this.#width + column;
    this.#done[at] = this.#done[at] | (way === 0 || way === 2 ? 1 : 2);
  }

  /**
   * Where two slots meet twice at a corner, crosswise, the contour turns round b: a stays connected.
   * Answers -1 at an end.
   */
  #wayOn(x: number, y: number, way: number, a: number, b: number): number {
    for (const turn of [1, 0, 3]) {
      const next = (way + turn) % 4;
      if (this.#leaves(x, y, next, a, b)) return next;
    }
    return -1;
  }

  /** The direction that leads on to `way` at this corner; -1 at a beginning. */
  #wayBefore(x: number, y: number, way: number, a: number, b: number): number {
    for (const turn of [3, 0, 1]) {
      const before = (way + turn) % 4;
      const fromX = x - (stepX[before] as number);
      const fromY = y - (stepY[before] as number);
      if (this.#leaves(fromX, fromY, before, a, b)) return before;
    }
    return -1;
  }

  /** The whole contour that holds the side leaving (x, y) in direction `way`. */
  follow(startX: number, startY: number, startWay: number): Contour {
    const a = this.#slotAt(
      startX + (ownX[startWay] as number),
      startY + (ownY[startWay] as number),
    );
    const b = this.#slotAt(
      startX + (otherX[startWay] as number),
      startY + (otherY[startWay] as number),
    );
    let x = startX;
    let y = startY;
    let way = startWay;
    let closed = false;
    for (let before = this.#wayBefore(x, y, way, a, b); before !== -1; ) {
      x -= stepX[before] as number;
      y -= stepY[before] as number;
      way = before;
      closed = x === startX && y === startY && way === startWay;
      if (closed) break;
      before = this.#wayBefore(x, y, way, a, b);
    }
    const [firstX, firstY, firstWay] = [x, y, way];
    let count = 0;
    for (;;) {
      count = this.#add(count, x, y);
      this.#markDone(x, y, way);
      x += stepX[way] as number;
      y += stepY[way] as number;
      way = this.#wayOn(x, y, way, a, b);
      if (way === -1 || (x === firstX && y === firstY && way === firstWay)) break;
    }
    if (!closed) count = this.#add(count, x, y);
    return { a, b, closed, corners: this.#corners.slice(0, count) };
  }

  #add(count: number, x: number, y: number): number {
    if (count + 2 > this.#corners.length) {
      const larger = new Int32Array(2 * this.#corners.length);
      larger.set(this.#corners);
      this.#corners = larger;
    }
    this.#corners[count] = x;
    this.#corners[count + 1] = y;
    return count + 2;
  }
}

/** All contours of a slot map, in the order the picture is read. Hands back control now and then. */
export function* traceContours(slots: Uint8Array, size: PixelSize): Generator<void, Contour[]> {
  const { width, height } = size;
  const tracing = new Tracing(slots, size);
  const contours: Contour[] = [];
  for (let y = 0; y < height; y++) {
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const slot = slots[i];
      if (y > 0 && slots[i - width] !== slot && !tracing.isDone(i, 1)) {
        const rightward = slots[i - width] < slot;
        contours.push(rightward ? tracing.follow(x, y, 0) : tracing.follow(x + 1, y, 2));
      }
      if (x > 0 && slots[i - 1] !== slot && !tracing.isDone(i, 2)) {
        const upward = slots[i - 1] < slot;
        contours.push(upward ? tracing.follow(x, y + 1, 3) : tracing.follow(x, y, 1));
      }
    }
    if (y % 256 === 255) yield;
  }
  return contours;
}
