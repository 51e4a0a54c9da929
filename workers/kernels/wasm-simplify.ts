// Simplifying in WebAssembly: the plain kernel of the core (`raster/simplify.ts`) with four rows at a time, alike to
// the last bit. Every picture gets a memory of its own, so that none of it stays.
import { sharesOfX, sharesOfZ } from '../../app/core/colour/lab.ts';
import { curveSteps, curveTable, sharesOfY } from '../../app/core/colour/lightness.ts';
import { boxOf } from '../../app/core/raster/gaussian-blur.ts';
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
import machineCode from './assembly/simplify.ts?assembly';

type Loop = (...numbers: readonly number[]) => void;
type Loops = Readonly<
  Record<'blurFour' | 'labOf' | 'weighAcross' | 'weighDown' | 'weighFour' | 'smoothFour', Loop>
>;

const floatBytes = 4;
const doubleBytes = 8;
const pageBytes = 65_536;
const wholeFours = (count: number): number => 4 * Math.ceil(count / 4);

/** A picture in the memory of an instance. All but width and height are bytes. */
interface Held extends PixelSize {
  readonly loops: Loops;
  readonly floats: Float32Array;
  readonly doubles: Float64Array;
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
  /** Tables. */
  readonly weights: number;
  readonly curve: number;
  readonly shares: number;
}

/** An instance with room for a picture of that size, all of it 0. */
function hold(module: WebAssembly.Module, { width, height }: PixelSize): Held {
  const stride = floatBytes * wholeFours(width);
  const step = floatBytes * wholeFours(height);
  const longer = Math.max(stride, step);
  let end = stride; // the first row is compared with one above it, to no end
  const take = (bytes: number): number => {
    const from = end;
    end += 16 * Math.ceil(bytes / 16);
    return from;
  };
  const takePlane = (): number => take(stride * wholeFours(height));
  const places = {
    planes: [takePlane(), takePlane(), takePlane()],
    turned: [takePlane(), takePlane()],
    across: takePlane(),
    down: takePlane(),
    turnedKept: take(4 * longer),
    totals: take(8 * longer),
    spare: take(12 * longer),
    weights: take(doubleBytes * (entries + 2)),
    curve: take(curveTable.byteLength),
    shares: take(doubleBytes * 9),
  } as const;
  const memory = new WebAssembly.Memory({ initial: Math.ceil(end / pageBytes) });
  const { exports } = new WebAssembly.Instance(module, { env: { memory } });
  const floats = new Float32Array(memory.buffer);
  const doubles = new Float64Array(memory.buffer);
  floats.set(curveTable, places.curve / floatBytes);
  doubles.set([...sharesOfX, ...sharesOfY, ...sharesOfZ], places.shares / doubleBytes);
  return { width, height, stride, step, floats, doubles, ...places, loops: exports as Loops };
}

/** Calls `each` with the first of every four rows of a picture of that height. */
function byFours(height: number, each: (row: number) => void): void {
  for (let row = 0; row < height; row += 4) each(row);
}

/** Rows of a plane, one after the other without padding, to or from the memory. */
function eachRow(
  { width, height, stride }: Held,
  at: number,
  row: (from: number, inMemory: number) => void,
) {
  for (let y = 0; y < height; y++) row(y * width, (at + y * stride) / floatBytes);
}

function put(held: Held, plane: Float32Array, at: number): void {
  eachRow(held, at, (from, to) => held.floats.set(plane.subarray(from, from + held.width), to));
}

function taken(held: Held, at: number): Float32Array {
  const plane = new Float32Array(held.width * held.height);
  eachRow(held, at, (to, from) => plane.set(held.floats.subarray(from, from + held.width), to));
  return plane;
}

/** Nothing is left after a step over the border. */
function closeBorders({ width, height, stride, step, across, down, floats }: Held): void {
  for (let y = 0; y < height; y++) {
    const row = (across + y * stride) / floatBytes;
    floats[row] = 0;
    floats.fill(0, row + width, row + stride / floatBytes);
  }
  for (let x = 0; x < width; x++) {
    const row = (down + x * step) / floatBytes;
    floats[row] = 0;
    floats.fill(0, row + height, row + step / floatBytes);
  }
}

function* blur(held: Held, sigmaPx: number): Generator<void> {
  const { loops, width, height, stride, step, planes, turned, spare } = held;
  const { radius, end, weight } = boxOf(sigmaPx);
  const [between] = turned;
  for (const plane of planes) {
    byFours(height, (y) =>
      loops.blurFour(
        plane + y * stride,
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
function labOf({ loops, height, stride, planes, shares, curve }: Held): void {
  const [red, green, blue] = planes;
  for (let at = 0; at < height * stride; at += stride) {
    loops.labOf(red + at, green + at, blue + at, stride, shares, curveSteps, curve);
  }
}

/** One direction of smoothing: the rows of some planes, written as columns of others. */
function smoothRows(
  { loops, turnedKept, totals, spare }: Held,
  from: readonly number[],
  stride: number,
  count: number,
  kept: number,
  squarings: number,
  to: readonly number[],
  step: number,
): void {
  byFours(count, (row) => {
    loops.weighFour(kept + row * stride, squarings, stride, turnedKept, totals);
    for (const [n, plane] of from.entries()) {
      const out = (to[n] as number) + row * floatBytes;
      loops.smoothFour(plane + row * stride, stride, turnedKept, totals, out, step, spare);
    }
  });
}

function* smooth(
  held: Held,
  planes: readonly number[],
  guides: readonly number[],
  smoothing: Smoothing,
): Generator<void> {
  const { loops, width, height, stride, step, turned, across, down, weights } = held;
  const { table, perDifference } = weightByDifference(smoothing);
  held.doubles.set(table, weights / doubleBytes);
  const [one = 0, two = 0, three = 0] = guides;
  const by = [one, two, three, perDifference, entries, weights] as const;
  for (let y = 0; y < height; y++) loops.weighAcross(y * stride, stride, ...by, across);
  yield;
  byFours(height, (y) => loops.weighDown(y * stride, stride, ...by, down + y * floatBytes, step));
  closeBorders(held);
  yield;
  for (let i = 0; i < iterations; i++) {
    smoothRows(held, planes, stride, height, across, i, turned, step);
    yield;
    smoothRows(held, turned.slice(0, planes.length), step, width, down, i, planes, stride);
    yield;
  }
}

/** Simplifies as the core does, by a module compiled of the machine code. */
function simplifyBy(module: WebAssembly.Module): Simplify {
  return function* simplifyInWasm(raster, pxPerMm) {
    const held = hold(module, raster);
    const [red, green, blue] = held.planes;
    put(held, raster.red, red);
    put(held, raster.green, green);
    put(held, raster.blue, blue);
    yield;
    const by = simplifyingFor(pxPerMm);
    yield* blur(held, by.blurPx);
    labOf(held);
    yield;
    // L*, a*, b* from here on; lightness guides colour, so it is smoothed last.
    yield* smooth(held, [green, blue], [red, green, blue], by.colour);
    yield* smooth(held, [red], [red], by.lightness);
    return { lightness: taken(held, red), a: taken(held, green), b: taken(held, blue) };
  };
}

/** In WebAssembly, or plainly where there is none with vectors. */
export function chooseSimplify(): Simplify {
  try {
    const bytes = Uint8Array.from(atob(machineCode), (sign) => sign.charCodeAt(0));
    return simplifyBy(new WebAssembly.Module(bytes));
  } catch {
    return simplify; // an old browser, or a policy of the host that lets no WebAssembly in
  }
}

/** As quick as it can be had here. */
export const quickSimplify = chooseSimplify();
