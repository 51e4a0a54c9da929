// What readings work with in the worker: machine code and the memory it works on, lent from one to the next.
import { sharesOfX, sharesOfZ } from '../../app/core/colour/lab.ts';
import { curveTable, sharesOfY } from '../../app/core/colour/lightness.ts';
import { Room } from '../../app/core/raster/room.ts';
import type { Simplify } from '../../app/core/raster/simplify.ts';
import type { PixelSize } from '../../app/core/raster/size.ts';
import { plainTools, type ReadingTools } from '../../app/core/reading/reading-input.ts';
import machineCode from './assembly/simplify.ts?assembly';
import {
  type Engine,
  floatBytes,
  type Loops,
  pageBytes,
  roomToSimplify,
  shares,
  simplifyBy,
  tables,
} from './wasm-simplify.ts';

/** An engine with room for so many bytes. */
function startEngine(module: WebAssembly.Module, bytes: number): Engine {
  const memory = new WebAssembly.Memory({ initial: Math.ceil((tables.end + bytes) / pageBytes) });
  const { exports } = new WebAssembly.Instance(module, { env: { memory } });
  const { buffer } = memory;
  new Float32Array(buffer, tables.curve).set(curveTable);
  new Float64Array(buffer, shares).set([...sharesOfX, ...sharesOfY, ...sharesOfZ]);
  return { loops: exports as Loops, room: new Room(buffer, tables.end) };
}

/** The machine code, or null where there is no WebAssembly with vectors. */
function compiled(): WebAssembly.Module | null {
  try {
    const bytes = Uint8Array.from(atob(machineCode), (sign) => sign.charCodeAt(0));
    return new WebAssembly.Module(bytes);
  } catch {
    return null; // an old browser, or a policy of the host that lets no WebAssembly in
  }
}

/** Bytes of three planes of a picture of that size. */
const rasterBytes = ({ width, height }: PixelSize): number => 3 * floatBytes * width * height;

export interface LentTools extends ReadingTools {
  /** Called when the reading is done: another may have them. */
  readonly handBack: () => void;
}

/** Tools for one reading after the other, of one memory: what was touched once need not be touched for the first time. */
export class ReadingDesk {
  readonly #module = compiled();
  #kept: Engine | null = null;

  /** Tools for a picture of that size, its raster included; plain ones where there is no WebAssembly or no memory for it. */
  lend(size: PixelSize): LentTools {
    const kept = this.#kept;
    this.#kept = null; // who reads meanwhile gets a memory of its own
    const bytes = rasterBytes(size) + roomToSimplify(size);
    try {
      if (!this.#module) return { ...plainTools(), handBack: () => {} };
      const isLarge = kept !== null && kept.room.buffer.byteLength >= tables.end + bytes;
      const engine = isLarge ? kept : startEngine(this.#module, bytes);
      const { room } = engine;
      room.giveBack(tables.end);
      const handBack = (): void => {
        this.#kept = engine;
      };
      return { room, simplify: simplifyBy(engine), handBack };
    } catch {
      return { ...plainTools(), handBack: () => {} };
    }
  }

  /** Lets go of the memory that is kept. */
  clear(): void {
    this.#kept = null;
  }
}

const once = new ReadingDesk();

/** Simplifies as quickly as it can be done here, in a memory of which nothing stays. */
export const quickSimplify: Simplify = function* (raster, pxPerMm) {
  const { lightness, a, b } = yield* once.lend(raster).simplify(raster, pxPerMm);
  return { lightness: lightness.slice(), a: a.slice(), b: b.slice() };
};
