import type { Point } from '../../colour/lab.ts';
import { labelRuns, type RunLabels } from '../../raster/label-shapes.ts';
import { type LinearRaster, labInPlace } from '../../raster/linear-raster.ts';
import { Room } from '../../raster/room.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { ColourSquares } from '../colour-squares.ts';
import { cellMeans } from '../families/surroundings.ts';
import type { ToneRange } from '../reading.ts';
import type { Slot } from '../slot.ts';
import { interestIn } from './centre-of-interest.ts';
import type { Detail, Details } from './detail.ts';
import { findMissing, light, type Missing, smoothColours } from './find-missing.ts';

interface DetailInput {
  readonly raster: LinearRaster;
  readonly slotMap: Uint8Array;
  readonly slots: readonly Slot[];
  readonly squares: ColourSquares;
  readonly range: ToneRange;
  /** 1 for the pixels of the subject; null without one. */
  readonly subject: Uint8Array | null;
  /** A loose circle round what stands out; null where nothing does. */
  readonly proposed: readonly Point[] | null;
  /** Holds what is large meanwhile. */
  readonly room?: Room;
}

// All figures of this file: own, but that the subject gets the finest shapes (common practice, no source).
/** Details are looked for at about so many px on a mm. */
const pxPerMmLooked = 2;
/** From this nearness on shapes are as fine as a brush point; mm2. */
const finelySeen = 0.65;
const leastMm2 = { near: 1, far: 4, light: 0.6 } as const;
const mostMm2 = { near: 80, far: 400, light: 30 } as const;
/** What hangs together over more than that is looked at again where it stands out so many times as much ... */
const harder = 1.7;
/** ... at most so many times. */
const mostRounds = 4;
/** The plan picks from these. */
const darkShapes = 120;
const lightShapes = 24;

/** From, to (one past) of pixels, pairs. */
type Pixels = readonly number[];

/** Runs of every shape of a map, but of what is empty. */
function linesByShape({ runs: { starts }, shapes, kinds }: RunLabels): Map<number, Pixels> {
  const lines = new Map<number, number[]>();
  for (let run = 0; run < shapes.length; run++) {
    if (kinds[shapes[run]] === 0) continue;
    const own = lines.get(shapes[run]);
    if (own) own.push(starts[run], starts[run + 1]);
    else lines.set(shapes[run], [starts[run], starts[run + 1]]);
  }
  return lines;
}

/** Pieces small enough to be one touch of the brush; what is larger comes apart where it stands out most. */
function* findPieces(
  missing: Missing,
  mostPx: (kind: number, from: number) => number,
): Generator<void, { readonly kind: number; readonly pixels: Pixels }[]> {
  const pieces: { kind: number; pixels: Pixels }[] = [];
  const map = missing.kinds.slice();
  for (let round = 1; round <= mostRounds; round++) {
    const labels = yield* labelRuns(map, missing.size);
    map.fill(0);
    const least = harder ** round;
    for (const [shape, pixels] of linesByShape(labels)) {
      const kind = labels.kinds[shape];
      if (labels.areasPx[shape] <= mostPx(kind, pixels[0])) {
        pieces.push({ kind, pixels });
        continue;
      }
      for (let n = 0; n < pixels.length; n += 2) {
        for (let i = pixels[n]; i < pixels[n + 1]; i++) {
          if (missing.times[i] >= least) map[i] = kind;
        }
      }
    }
    yield;
  }
  return pieces;
}

/** What a map holds in the middle of every cell of so many pixels. */
function middlesOf(
  map: Uint8Array,
  { width, height }: PixelSize,
  cells: PixelSize,
  step: number,
  out: Uint8Array,
): Uint8Array {
  const middle = (n: number, count: number): number => Math.min(count - 1, n * step + (step >> 1));
  const columns = Int32Array.from({ length: cells.width }, (_, x) => middle(x, width));
  for (let y = 0, i = 0; y < cells.height; y++) {
    const line = middle(y, height) * width;
    for (let x = 0; x < cells.width; x++, i++) out[i] = map[line + columns[x]];
  }
  return out;
}

/**
 * Small shapes that stand off the smooth colours of the slots, darker or more colourful, and small lights: what a
 * plan's details, accents and sparkles are picked from. Hands back control now and then.
 */
export function* findDetails(
  { raster, slotMap, slots, squares, range, subject, proposed, room = new Room() }: DetailInput,
  pxPerMm: number,
): Generator<void, Details> {
  const step = Math.max(1, Math.round(pxPerMm / pxPerMmLooked));
  const { grid: size, means } = yield* cellMeans(
    [raster.red, raster.green, raster.blue],
    raster,
    step,
    room,
  );
  const [red, green, blue] = means;
  const photo = labInPlace({ ...size, red, green, blue });
  yield;
  const small = middlesOf(slotMap, raster, size, step, room.bytes(size.width * size.height));
  const smooth = smoothColours(small, squares, size, step, pxPerMm, room);
  yield;
  const nearness = interestIn(subject, proposed, raster);
  const canBeLight = (i: number): boolean => slots[small[i]]?.reserve === false;
  const settings = { cellsPerMm: pxPerMm / step, nearness, range, canBeLight, room };
  const missing = findMissing(photo, smooth, size, settings);
  yield;
  const px2PerMm2 = (pxPerMm / step) ** 2;
  const nearAt = (i: number): number =>
    nearness(
      ((i % size.width) + 0.5) / size.width,
      (Math.floor(i / size.width) + 0.5) / size.height,
    );
  const limit = (of: typeof leastMm2 | typeof mostMm2, kind: number, near: number): number =>
    px2PerMm2 * (kind === light ? of.light : near >= finelySeen ? of.near : of.far);
  const pieces = yield* findPieces(missing, (kind, from) => limit(mostMm2, kind, nearAt(from)));
  const squareOf = Int32Array.from({ length: size.width }, (_, column) =>
    Math.floor((column * step) / squares.sidePx),
  );
  const perSlot = squares.across * squares.down;
  const rowOf = new Int32Array(slots.length * perSlot).fill(-1);
  for (const [row, slot] of squares.slots.entries()) {
    rowOf[slot * perSlot + squares.squares[row]] = row;
  }
  const found = pieces.flatMap(({ kind, pixels }) => {
    let [count, l, a, b, x, y, need] = [0, 0, 0, 0, 0, 0, 0];
    const lines: number[] = [];
    const rows = new Map<number, number>();
    for (let n = 0; n < pixels.length; n += 2) {
      const row = Math.floor(pixels[n] / size.width);
      const start = row * size.width;
      lines.push(row, pixels[n] - start, pixels[n + 1] - start);
      const line = Math.floor((row * step) / squares.sidePx) * squares.across;
      for (let i = pixels[n]; i < pixels[n + 1]; i++) {
        const column = i - start;
        const square = line + squareOf[column];
        const own = rowOf[small[i] * perSlot + square];
        if (own >= 0) rows.set(own, (rows.get(own) ?? 0) + 1);
        count++;
        l += photo.lightness[i];
        a += photo.a[i];
        b += photo.b[i];
        x += column;
        y += row;
        need += missing.times[i];
      }
    }
    const at: Point = [(x / count + 0.5) / size.width, (y / count + 0.5) / size.height];
    const near = nearness(...at);
    const seen = [...rows.values()].reduce((sum, share) => sum + share, 0);
    if (count < limit(leastMm2, kind, near) || seen === 0) return [];
    const detail: Detail = {
      isLight: kind === light,
      lines,
      at,
      areaMm2: count / px2PerMm2,
      lab: [l / count, a / count, b / count],
      rows: [...rows.keys()],
      shares: [...rows.values()].map((share) => share / seen),
      near,
    };
    return [{ detail, rank: need * near }];
  });
  const best = (isLight: boolean, most: number) =>
    found
      .filter(({ detail }) => detail.isLight === isLight)
      .sort((one, two) => two.rank - one.rank)
      .slice(0, most)
      .map(({ detail }) => detail);
  return { cellPx: step, shapes: [...best(false, darkShapes), ...best(true, lightShapes)] };
}
