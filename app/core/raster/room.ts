/** What one array is aligned to, bytes: a vector. */
const alignment = 16;

/** A kind of array a room can hand out. */
interface ArrayKind<T> {
  readonly BYTES_PER_ELEMENT: number;
  new (buffer: ArrayBuffer, start: number, count: number): T;
  new (count: number): T;
}

/**
 * Memory that one piece of work after the other takes its arrays from. A system hands out memory page by page as it is
 * touched first, which can take longer than to fill it; what is taken here was mostly touched before.
 * Arrays hold whatever was left in them. Where the room is full, or there is none, they are new ones.
 */
export class Room {
  readonly buffer: ArrayBuffer;
  #end: number;

  /** All of the buffer from `start` on, bytes. */
  constructor(buffer = new ArrayBuffer(0), start = 0) {
    this.buffer = buffer;
    this.#end = start;
  }

  floats(count: number): Float32Array<ArrayBuffer> {
    return this.#take(Float32Array, count);
  }

  doubles(count: number): Float64Array<ArrayBuffer> {
    return this.#take(Float64Array, count);
  }

  ints(count: number): Int32Array<ArrayBuffer> {
    return this.#take(Int32Array, count);
  }

  bytes(count: number): Uint8Array<ArrayBuffer> {
    return this.#take(Uint8Array, count);
  }

  /** What is taken from here on is free again once it was given back to this place. */
  mark(): number {
    return this.#end;
  }

  giveBack(mark: number): void {
    this.#end = mark;
  }

  #take<T>(Kind: ArrayKind<T>, count: number): T {
    const start = alignment * Math.ceil(this.#end / alignment);
    const end = start + count * Kind.BYTES_PER_ELEMENT;
    if (end > this.buffer.byteLength) return new Kind(count);
    this.#end = end;
    return new Kind(this.buffer, start, count);
  }
}
