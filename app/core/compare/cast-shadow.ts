import { luminanceOfLightness } from '../colour/lightness.ts';
import { runToEnd } from '../numeric/run-to-end.ts';
import { labelPixels, labelRuns } from '../raster/label-shapes.ts';
import type { LabPlanes } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { type MeasuredSheet, pixelStates } from './measured-sheet.ts';

// Figures of this file: own.
/** Side of a square that is looked at, px of the squared sheet: some 3 mm. */
const squarePx = 6;
/** A square may lie in a shadow where it has less light than expected by so much: natural logarithm. */
const darkerBy = 0.12;
/** Fewer squares together than this share of the sheet are no shadow worth a word. */
const leastShare = 0.01;
/** So many squares beyond its border a shadow is looked at from outside, past its soft rim. */
const beyond = 4;
/**
 * Across the border of a shadow two squares are of one slot so often at least, beside two that are as far apart within
 * it: a wash ends where its shape does.
 */
const acrossShapes = 0.25;
const ways = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;
/** A shadow falls on two slots at least, so many squares each, and darkens them alike: as a share of it, and more. */
const leastSquares = 6;
const alikeShare = 0.25;
const alikeMore = 0.06;
/** The soft rim of a shadow, squares. */
const rim = 2;

interface Squares extends PixelSize {
  /** Slot all of a square is of; -1 where it holds a border, or nothing counts. */
  readonly slots: Int16Array;
  /** Natural logarithm of the light measured over the light expected; 0 where nothing counts. */
  readonly light: Float32Array;
}

function squaresOf(
  measured: MeasuredSheet,
  expected: Pick<LabPlanes, 'lightness'>,
  slotMap: Uint8Array,
  size: PixelSize,
): Squares {
  const [width, height] = [size.width, size.height].map((side) => Math.floor(side / squarePx));
  const slots = new Int16Array(width * height).fill(-1);
  const light = new Float32Array(width * height);
  for (let row = 0, n = 0; row < height; row++)
    for (let column = 0; column < width; column++, n++) {
      const first = row * squarePx * size.width + column * squarePx;
      let [seen, meant, count, isWhole] = [0, 0, 0, true];
      for (let y = 0; y < squarePx; y++)
        for (let i = first + y * size.width; i < first + y * size.width + squarePx; i++) {
          if (slotMap[i] !== slotMap[first]) isWhole = false;
          if (measured.states[i] === pixelStates.missing) continue;
          seen += luminanceOfLightness(Math.max(1, measured.lightness[i]));
          meant += luminanceOfLightness(Math.max(1, expected.lightness[i]));
          count++;
        }
      if (count === 0) continue;
      light[n] = Math.log(seen / meant);
      if (isWhole) slots[n] = slotMap[first];
    }
  return { width, height, slots, light };
}

const median = (list: number[]): number =>
  list.sort((one, two) => one - two)[list.length >> 1] ?? 0;

/** Whether some squares that lie together are darkened as by a shadow: two slots alike, and across their borders. */
function isShadow(own: readonly number[], labels: Int32Array, squares: Squares): boolean {
  const { width, height, slots, light } = squares;
  const bySlot = new Map<number, number[]>();
  for (const n of own)
    if (slots[n] >= 0) bySlot.set(slots[n], [...(bySlot.get(slots[n]) ?? []), n]);
  const depths = [...bySlot.values()]
    .filter((list) => list.length >= leastSquares)
    .map((list) => ({ depth: median(list.map((n) => light[n])), count: list.length }));
  const depth = median(own.map((n) => light[n]));
  const alike = alikeShare * Math.abs(depth) + alikeMore;
  const agreeing = depths.filter((each) => Math.abs(each.depth - depth) < alike);
  const counted = (list: typeof depths): number => list.reduce((sum, { count }) => sum + count, 0);
  if (agreeing.length < 2 || counted(agreeing) < 0.7 * counted(depths)) return false;
  const within = { same: 0, all: 0 };
  const outwards = { same: 0, all: 0 };
  for (const n of own) {
    if (slots[n] < 0) continue;
    const [x, y] = [n % width, Math.floor(n / width)];
    for (const [dx, dy] of ways) {
      const [u, v] = [x + beyond * dx, y + beyond * dy];
      if (u < 0 || v < 0 || u >= width || v >= height) continue;
      const far = v * width + u;
      const isWithin = labels[far] === labels[n];
      if (slots[far] < 0 || (!isWithin && light[far] < -darkerBy)) continue;
      const pairs = isWithin ? within : outwards;
      pairs.all++;
      if (slots[far] === slots[n]) pairs.same++;
    }
  }
  // Shares of pairs in one slot, each multiplied by both counts.
  return outwards.same * within.all > acrossShapes * within.same * outwards.all;
}

/**
 * Where a shadow lies on the sheet, 1 in each of its pixels; null where there is none. A shadow takes about the same
 * share of the light from whatever it falls on, and ends across shapes; paint laid too dark ends where its shape does.
 */
export function castShadow(
  measured: MeasuredSheet,
  expected: Pick<LabPlanes, 'lightness'>,
  slotMap: Uint8Array,
  size: PixelSize,
): Uint8Array | null {
  const squares = squaresOf(measured, expected, slotMap, size);
  const { width, height, light } = squares;
  const runs = runToEnd(
    labelRuns(
      Uint8Array.from(light, (own) => (own < -darkerBy ? 1 : 0)),
      squares,
    ),
  );
  const labels = labelPixels(runs);
  const members = new Map<number, number[]>();
  for (let n = 0; n < labels.length; n++) {
    if (runs.kinds[labels[n]] === 0) continue;
    const own = members.get(labels[n]) ?? [];
    own.push(n);
    members.set(labels[n], own);
  }
  const found = [...members.values()].filter(
    (own) => own.length >= leastShare * light.length && isShadow(own, labels, squares),
  );
  if (found.length === 0) return null;
  const mask = new Uint8Array(size.width * size.height);
  for (const n of found.flat()) {
    const [x, y] = [n % width, Math.floor(n / width)];
    // The last squares go on to the sheet's own border.
    const to = (at: number, count: number, side: number): number =>
      at + rim >= count - 1 ? side : (at + rim + 1) * squarePx;
    const left = Math.max(0, x - rim) * squarePx;
    const right = to(x, width, size.width);
    for (let row = Math.max(0, y - rim) * squarePx; row < to(y, height, size.height); row++)
      mask.fill(1, row * size.width + left, row * size.width + right);
  }
  return mask;
}
