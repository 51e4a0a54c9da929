// Simplifying in WebAssembly: the plain kernel of the core (`raster/simplify.ts`) with four rows at a time, alike to
// the last bit, in a memory that `reading-desk.ts` lends.
import { curveSteps, curveTable } from '../../app/core/colour/lightness.ts';
import { boxOf } from '../../app/core/raster/gaussian-blur.ts';
import type { Room } from '../../app/core/raster/room.ts';
import {
  entries,
  iterations,
  type Simplify,
  type Smoothing,
  simplify,
  simplifyingFor,
  weightByDifference,
} from '../../app/core/raster/simplify.ts';
import type { PixelSize } from '../../app/core/raster/size.ts';

type Loop = (...numbers: readonly number[]) => void;
export type Loops = Readonly<
  Record<'blurFour' | 'labOf' | 'weighAcross' | 'weighDown' | 'weighFour' | 'smoothFour', Loop>
>;

export const floatBytes = 4;
const doubleBytes = 8;
export const pageBytes = 65_536;
const wholeFours = (count: number): number => 4 * Math.ceil(count / 4);

/** The machine code at work on its memory, and the room in it; the tables lie before the room. */
export interface Engine {
  readonly loops: Loops;
  readonly room: Room;
}

export const tables = { weights: 0, curve: doubleBytes * (entries + 2), end: pageBytes } as const;
export const shares = tables.curve + doubleBytes * Math.ceil(curveTable.byteLength / doubleBytes);

/** A picture in the memory of an engine. All but width and height are bytes. */
interface Held extends PixelSize {
  readonly loops: Loops;
  readonly buffer: ArrayBuffer;
  /** From row to row, and from row to row of what is turned; rows are padded to whole fours, and so is their number. */
  readonly stride: number;
  readonly step: number;
  /** Three planes of the picture, two turned ones, and two of weights, the second turned. */
  readonly planes: readonly [number, number, number];
  readonly turned: readonly [number, number];
  readonly across: number;
  readonly down: number;
  /** For the weights of four rows, and for what else is worked out on four rows. */
  readonly turnedKept: number;
  readonly totals: number;
  readonly spare: number;
  /** Of the room: all but the planes of the picture lies behind it. */
  readonly mark: number;
}

/** Bytes that simplifying a picture of that size takes of a room, the three planes that stay among them. */
export function roomToSimplify({ width, height }: PixelSize): number {
  const [across, down] = [wholeFours(width), wholeFours(height)];
  return floatBytes * (7 * across * down + 24 * Math.max(across, down)) + 1024;
}

/** Takes the place for a picture of that size; the planes of the picture come first. Null where the room is too small. */
function hold({ loops, room }: Engine, { width, height }: PixelSize): Held | null {
  const stride = floatBytes * wholeFours(width);
  const step = floatBytes * wholeFours(height);
  const { buffer } = room;
  if (room.mark() + roomToSimplify({ width, height }) > buffer.byteLength) return null;
  const take = (bytes: number): number => room.bytes(bytes).byteOffset;
  const takePlane = (): number => take(stride * wholeFours(height));
  const longer = Math.max(stride, step);
  const planes = [takePlane(), takePlane(), takePlane()] as const;
  return {
    ...{ width, height, loops, buffer, stride, step, planes },
    mark: room.mark(),
    turned: [takePlane(), takePlane()],
    across: takePlane(),
    down: takePlane(),
    turnedKept: take(4 * longer),
    totals: take(8 * longer),
    spare: take(12 * longer),
  };
}

/** Calls `each` with the first of every four rows of a picture of that height. */
function byFours(height: number, each: (row: number) => void): void {
  for (let row = 0; row < height; row += 4) each(row);
}

/** Where a plane lies in the memory: where it is if it lies there with whole rows, else it is copied to `to`. */
function placed({ buffer, width, height, stride }: Held, plane: Float32Array, to: number): number {
  if (plane.buffer === buffer && stride === floatBytes * width) return plane.byteOffset;
  const floats = new Float32Array(buffer, to);
  for (let y = 0, row = 0; y < height; y++, row += stride / floatBytes) {
    floats.set(plane.subarray(y * width, (y + 1) * width), row);
  }
  return to;
}

/** A plane of the memory, its rows moved together. */
function packed({ buffer, width, height, stride }: Held, from: number): Float32Array {
  const padded = new Float32Array(buffer, from, (stride / floatBytes) * height);
  for (let y = 1; y < height && stride > floatBytes * width; y++) {
    const row = (y * stride) / floatBytes;
    padded.copyWithin(y * width, row, row + width);
  }
  return padded.subarray(0, width * height);
}

/** Nothing is left after a step over the border. */
function closeBorders({ width, height, stride, step, across, down, buffer }: Held): void {
  const floats = new Float32Array(buffer);
  for (let y = 0; y < height; y++) floats[(across + y * stride) / floatBytes] = 0;
  for (let x = 0; x < width; x++) floats[(down + x * step) / floatBytes] = 0;
}

/** Blurs planes that lie at `from` into those of the picture. */
function* blur(held: Held, from: readonly number[], sigmaPx: number): Generator<void> {
  const { loops, width, height, stride, step, planes, turned, spare } = held;
  const { radius, end, weight } = boxOf(sigmaPx);
  const [between] = turned;
  for (const [n, plane] of planes.entries()) {
    byFours(height, (y) =>
      loops.blurFour(
        (from[n] as number) + y * stride,
        stride,
        width,
        between + y * floatBytes,
        step,
        radius,
        end,
        weight,
        spare,
      ),
    );
    yield;
    byFours(width, (x) =>
      loops.blurFour(
        between + x * step,
        step,
        height,
        plane + x * floatBytes,
        stride,
        radius,
        end,
        weight,
        spare,
      ),
    );
    yield;
  }
}

/** Linear light to L*, a*, b* in place. */
function labOf({ loops, height, stride, planes }: Held): void {
  const [red, green, blue] = planes;
  for (let at = 0; at < height * stride; at += stride) {
    loops.labOf(red + at, green + at, blue + at, stride, shares, curveSteps, tables.curve);
  }
}

/** One direction of smoothing: so many rows of some planes, `length` pixels each, written as columns of others. */
function smoothRows(
  { loops, turnedKept, totals, spare }: Held,
  from: readonly number[],
  stride: number,
  length: number,
  count: number,
  kept: number,
  squarings: number,
  to: readonly number[],
  step: number,
): void {
  byFours(count, (row) => {
    loops.weighFour(kept + row * stride, squarings, stride, length, turnedKept, totals);
    for (const [n, plane] of from.entries()) {
      const out = (to[n] as number) + row * floatBytes;
      loops.smoothFour(plane + row * stride, stride, length, turnedKept, totals, out, step, spare);
    }
  });
}

function* smooth(
  held: Held,
  planes: readonly number[],
  guides: readonly number[],
  smoothing: Smoothing,
): Generator<void> {
  const { loops, width, height, stride, step, turned, across, down } = held;
  const { table, perDifference } = weightByDifference(smoothing);
  new Float64Array(held.buffer, tables.weights).set(table);
  const [one = 0, two = 0, three = 0] = guides;
  const by = [one, two, three, perDifference, entries, tables.weights] as const;
  for (let y = 0; y < height; y++) loops.weighAcross(y * stride, stride, ...by, across);
  yield;
  byFours(height, (y) => loops.weighDown(y * stride, stride, ...by, down + y * floatBytes, step));
  closeBorders(held);
  yield;
  for (let i = 0; i < iterations; i++) {
    smoothRows(held, planes, stride, width, height, across, i, turned, step);
    yield;
    smoothRows(held, turned.slice(0, planes.length), step, height, width, down, i, planes, stride);
    yield;
  }
}

/** Simplifies as the core does; the planes lie in the engine's room. */
export function simplifyBy(engine: Engine): Simplify {
  return function* simplifyInWasm(raster, pxPerMm) {
    const held = hold(engine, raster);
    if (!held) return yield* simplify(raster, pxPerMm);
    const [red, green, blue] = held.planes;
    const from = [
      placed(held, raster.red, red),
      placed(held, raster.green, green),
      placed(held, raster.blue, blue),
    ];
    yield;
    const by = simplifyingFor(pxPerMm);
    yield* blur(held, from, by.blurPx);
    labOf(held);
    yield;
    // L*, a*, b* from here on; lightness guides colour, so it is smoothed last.
    yield* smooth(held, [green, blue], [red, green, blue], by.colour);
    yield* smooth(held, [red], [red], by.lightness);
    engine.room.giveBack(held.mark);
    return { lightness: packed(held, red), a: packed(held, green), b: packed(held, blue) };
  };
}
