import type { Point } from '../../colour/lab.ts';
import { smallShapeMm } from '../../limits.ts';
import { labelRuns, measureOutlines } from '../../raster/label-shapes.ts';
import { type PixelSize, shortSide, sideTowards } from '../../raster/size.ts';
import type { ToneRange } from '../reading.ts';
import type { Slot, SlotSlope } from '../slot.ts';
import { targetOf } from '../tone-range.ts';
import { bandOfCell, brushedBand, type CellTones, familyOfCell, passageOfCell } from './cells.ts';

/** The whole sheet is one passage until a subject is chosen; then ground and subject, in this order. */
const wholeSheet = ['sheet'];
const parted = ['ground', 'subject'];

interface SlotSettings {
  readonly tones: CellTones;
  /** Of the picture with her whites brushed in; null where she brushed none. */
  readonly brushed: CellTones | null;
  readonly range: ToneRange;
  readonly pxPerMm: number;
  /** The number on the screen of a band and of a family, by the number it has in a cell. */
  readonly bandNumber: (band: number) => number;
  readonly familyNumber: (family: number) => number;
  readonly hasSubject: boolean;
}

/** Sums over its shapes for every cell. */
function sumByCell({ kinds, areasPx, outlinesPx }: ShapeFacts, pxPerMm: number) {
  const totals = new Map<number, { px: number; shapes: number; small: number; largest: number }>();
  for (let shape = 0; shape < kinds.length; shape++) {
    const cell = kinds[shape];
    const area = areasPx[shape];
    const total = totals.get(cell) ?? { px: 0, shapes: 0, small: 0, largest: 0 };
    total.px += area;
    total.shapes++;
    total.largest = Math.max(total.largest, area);
    if (shortSide(area, outlinesPx[shape]) < smallShapeMm * pxPerMm) total.small++;
    totals.set(cell, total);
  }
  return totals;
}

/** The slots by passage, band and family, and the cell each was made from. */
export function listSlots(
  facts: ShapeFacts,
  settings: SlotSettings,
): { slots: Slot[]; cells: number[] } {
  const { tones, brushed, range, pxPerMm, bandNumber, familyNumber, hasSubject } = settings;
  const passages = hasSubject ? parted : wholeSheet;
  const totals = sumByCell(facts, pxPerMm);
  let pixels = 0;
  for (const { px } of totals.values()) pixels += px;
  const order = (cell: number): number =>
    10_000 * passageOfCell(cell) +
    100 * bandNumber(bandOfCell(cell)) +
    familyNumber(familyOfCell(cell));
  const cells = [...totals.keys()].sort((x, y) => order(x) - order(y) || x - y);
  const slots = cells.map((cell): Slot => {
    const total = totals.get(cell) ?? { px: 0, shapes: 0, small: 0, largest: 0 };
    const byHand = bandOfCell(cell) === brushedBand;
    const mean = (byHand ? brushed : tones)?.meanOf((k) => k === cell);
    if (!mean) throw new RangeError(`Cell ${cell} came out of nothing`);
    const target = targetOf(range, { lab: mean.lab, byHand });
    return {
      passage: passages[passageOfCell(cell)],
      band: bandNumber(bandOfCell(cell)),
      family: familyNumber(familyOfCell(cell)),
      share: total.px / pixels,
      lab: mean.lab,
      ...target,
      ...(byHand && { byHand }),
      shapes: total.shapes,
      smallShapes: total.small,
      largestMm2: total.largest / (pxPerMm * pxPerMm),
    };
  });
  return { slots, cells };
}

/** Size and form of every connected shape of a map. */
export interface ShapeFacts {
  readonly kinds: Uint8Array;
  readonly areasPx: Int32Array;
  /** Length of the outline, px; see `measureOutlines`. */
  readonly outlinesPx: Float64Array;
}

/** Hands back control now and then. */
export function* shapeFacts(map: Uint8Array, size: PixelSize): Generator<void, ShapeFacts> {
  const labels = yield* labelRuns(map, size);
  yield;
  const { kinds, areasPx } = labels;
  return { kinds, areasPx, outlinesPx: measureOutlines(labels) };
}

/** Share of the picture, 0..1, in shapes under that area (px2) or with a shorter side (px) than that. */
export function tooSmallShare(
  { areasPx, outlinesPx }: Pick<ShapeFacts, 'areasPx' | 'outlinesPx'>,
  areaPx: number,
  sidePx: number,
): number {
  let small = 0;
  let all = 0;
  for (let shape = 0; shape < areasPx.length; shape++) {
    const area = areasPx[shape];
    all += area;
    if (area < areaPx || shortSide(area, outlinesPx[shape]) < sidePx) small += area;
  }
  return all > 0 ? small / all : 0;
}

/** Where a slot lies and how its lightness slopes. */
export interface SlotLie {
  /** Mean place of its pixels, 0..1 from the left and from the top. */
  readonly centre: Point;
  readonly slope?: SlotSlope;
}

/** Rows between two moments at which others may have their turn. */
const rowsPerPiece = 256;
/** n, sums of x, y, xx, xy, yy, l, ll, lx, ly. */
const sumsPerSlot = 10;
/** Bins of `lightnessMap` to one L*. */
const binsPerLightness = 2.55;
/** A slope under this is none, L*. */
const leastSlope = 1;

/** 1 + 4 + 9 + ... + k^2. */
const squaresUpTo = (k: number): number => (k * (k + 1) * (2 * k + 1)) / 6;

/** The plane fitted to a slot's lightness by least squares, from its sums; null where there is none. */
function planeOf(sums: Float64Array, offset: number): SlotSlope | null {
  const sum = (i: number): number => sums[offset + i];
  const n = sum(0);
  const [x, y, l] = [sum(1) / n, sum(2) / n, sum(6) / n];
  const xx = sum(3) / n - x * x;
  const xy = sum(4) / n - x * y;
  const yy = sum(5) / n - y * y;
  const ll = sum(7) / n - l * l;
  const lx = sum(8) / n - l * x;
  const ly = sum(9) / n - l * y;
  const det = xx * yy - xy * xy;
  // A row or a column of pixels, or next to one, has no slope across it.
  if (det < 1e-6 * (xx + yy) ** 2 || ll <= 0) return null;
  const gx = (yy * lx - xy * ly) / det;
  const gy = (xx * ly - xy * lx) / det;
  const onPlane = gx * lx + gy * ly;
  // An even spread has a range of sqrt(12) times its standard deviation.
  const lightness = Math.sqrt(12 * Math.max(0, onPlane)) / binsPerLightness;
  if (lightness < leastSlope) return null;
  return { lightness, towards: sideTowards(-gx, -gy), fit: Math.min(1, onPlane / ll) };
}

/** Adds row y to the sums of the slots: by runs of one slot, only what depends on lightness pixel by pixel. */
function addRow(
  slotMap: Uint8Array,
  lightnessMap: Uint8Array,
  width: number,
  y: number,
  sums: Float64Array,
): void {
  const row = y * width;
  for (let from = 0, to = 0; from < width; from = to) {
    const slot = slotMap[row + from];
    let l = 0;
    let ll = 0;
    let lx = 0;
    for (to = from; to < width && slotMap[row + to] === slot; to++) {
      const own = lightnessMap[row + to];
      l += own;
      ll += own * own;
      lx += own * to;
    }
    const start = slot * sumsPerSlot;
    const n = to - from;
    const x = (n * (from + to - 1)) / 2;
    const xx = squaresUpTo(to - 1) - squaresUpTo(from - 1);
    sums[start] += n;
    sums[start + 1] += x;
    sums[start + 2] += n * y;
    sums[start + 3] += xx;
    sums[start + 4] += x * y;
    sums[start + 5] += n * y * y;
    sums[start + 6] += l;
    sums[start + 7] += ll;
    sums[start + 8] += lx;
    sums[start + 9] += l * y;
  }
}

/**
 * Centre and slope of every slot. `slotMap`: slot of every pixel, 0..slotCount-1; `lightnessMap`:
 * simplified lightness, round(L* x 2.55); both of `size`, row by row. Sums stay whole and under 2^53:
 * 4 million pixels x 2000 x 2000. Ordinary least squares, common practice.
 */
export function* slotSlopes(
  slotMap: Uint8Array,
  lightnessMap: Uint8Array,
  { width, height }: PixelSize,
  slotCount: number,
): Generator<void, SlotLie[]> {
  const sums = new Float64Array(slotCount * sumsPerSlot);
  for (let y = 0; y < height; y++) {
    addRow(slotMap, lightnessMap, width, y, sums);
    if (y % rowsPerPiece === rowsPerPiece - 1) yield;
  }
  return Array.from({ length: slotCount }, (_, slot): SlotLie => {
    const offset = slot * sumsPerSlot;
    const n = Math.max(1, sums[offset]);
    const slope = planeOf(sums, offset);
    return {
      centre: [(sums[offset + 1] / n + 0.5) / width, (sums[offset + 2] / n + 0.5) / height],
      ...(slope && { slope }),
    };
  });
}
