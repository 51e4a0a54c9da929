import type { Lab } from '../colour/lab.ts';
import { runToEnd } from '../numeric/run-to-end.ts';
import { labelPixels, labelRuns } from '../raster/label-shapes.ts';
import type { LabPlanes } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { type MeasuredSheet, pixelStates } from './measured-sheet.ts';

/** How a part of the sheet differs from what was expected of it. */
export interface ShapeDifference {
  /** Index into the plan's slots. */
  readonly slot: number;
  /** Connected shapes it is made of, numbers of `ShapeMap.labels`; all those of its slot that are off alike. */
  readonly shapes: readonly number[];
  /** Share of the sheet, and of it that could be measured, 0..1. */
  readonly share: number;
  readonly measuredShare: number;
  /** Middle of its pixels, 0..1 from the left and from the top. */
  readonly at: readonly [number, number];
  readonly expected: Lab;
  readonly measured: Lab;
}

/** The connected shapes of a slot map. */
export interface ShapeMap {
  readonly labels: Int32Array;
  readonly kinds: Uint8Array;
}

export const shapesOf = (slotMap: Uint8Array, size: PixelSize): ShapeMap => {
  const runs = runToEnd(labelRuns(slotMap, size));
  return { labels: labelPixels(runs), kinds: runs.kinds };
};

/** Sums over the pixels of a shape: count, counted, x, y, then expected and measured L*, a*, b* of the counted. */
const fields = 10;

/** A pixel whose neighbours so far away are of another shape lies on a border, where nothing is certain, px. */
const borderPx = 2;

function sumsOf(
  { labels, kinds }: ShapeMap,
  { width, height }: PixelSize,
  expected: LabPlanes,
  measured: MeasuredSheet,
): Float64Array {
  const sums = new Float64Array(kinds.length * fields);
  for (let y = 0, i = 0; y < height; y++) {
    const above = Math.max(0, y - borderPx) * width;
    const below = Math.min(height - 1, y + borderPx) * width;
    for (let x = 0; x < width; x++, i++) {
      const label = labels[i];
      const k = label * fields;
      sums[k]++;
      sums[k + 2] += x;
      sums[k + 3] += y;
      if (measured.states[i] !== pixelStates.counts) continue;
      if (labels[above + x] !== label || labels[below + x] !== label) continue;
      if (labels[i - Math.min(x, borderPx)] !== label) continue;
      if (labels[i + Math.min(width - 1 - x, borderPx)] !== label) continue;
      sums[k + 1]++;
      sums[k + 4] += expected.lightness[i];
      sums[k + 5] += expected.a[i];
      sums[k + 6] += expected.b[i];
      sums[k + 7] += measured.lightness[i];
      sums[k + 8] += measured.a[i];
      sums[k + 9] += measured.b[i];
    }
  }
  return sums;
}

/** Shapes of a slot whose lightness is off by nearly as much are off alike, L* (own). */
const alike = 3;
/** A shape with fewer measured pixels says nothing by itself: it goes with the rest of its slot. */
const fewestPx = 60;

/** Shapes that are off alike, as lists of shapes. */
function alikeIn(shapes: readonly number[], sums: Float64Array): number[][] {
  const off = (shape: number): number =>
    (sums[shape * fields + 7] - sums[shape * fields + 4]) / sums[shape * fields + 1];
  const sure = shapes.filter((shape) => sums[shape * fields + 1] >= fewestPx);
  if (sure.length === 0) return [[...shapes]];
  const rest = shapes.filter((shape) => sums[shape * fields + 1] < fewestPx);
  const groups: number[][] = [];
  const left = sure.sort((one, two) => sums[two * fields] - sums[one * fields]);
  while (left.length > 0) {
    const first = off(left[0]);
    const same = left.filter((shape) => Math.abs(off(shape) - first) < alike);
    groups.push(same);
    for (const shape of same) left.splice(left.indexOf(shape), 1);
  }
  groups[0].push(...rest);
  return groups;
}

/**
 * The differences of a measured sheet from the expected one, slot by slot; where some shapes of a slot are off
 * otherwise than its largest, they are a row of their own. What could not be measured at all is left out.
 */
export function shapeDifferences(
  map: ShapeMap,
  size: PixelSize,
  expected: LabPlanes,
  measured: MeasuredSheet,
): ShapeDifference[] {
  const sums = sumsOf(map, size, expected, measured);
  const bySlot = new Map<number, number[]>();
  for (let shape = 0; shape < map.kinds.length; shape++) {
    const own = bySlot.get(map.kinds[shape]) ?? [];
    own.push(shape);
    bySlot.set(map.kinds[shape], own);
  }
  const whole = size.width * size.height;
  return [...bySlot].flatMap(([slot, shapes]) =>
    alikeIn(shapes, sums).flatMap((group): ShapeDifference[] => {
      const total = new Float64Array(fields);
      for (const shape of group)
        for (let k = 0; k < fields; k++) total[k] += sums[shape * fields + k];
      const [count, counted, x, y] = total;
      if (counted === 0) return [];
      const mean = (from: number): Lab => [
        total[from] / counted,
        total[from + 1] / counted,
        total[from + 2] / counted,
      ];
      return [
        {
          slot,
          shapes: group,
          share: count / whole,
          measuredShare: counted / whole,
          at: [(x / count + 0.5) / size.width, (y / count + 0.5) / size.height],
          expected: mean(4),
          measured: mean(7),
        },
      ];
    }),
  );
}
