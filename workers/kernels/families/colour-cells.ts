import type { LabPlanes } from '../pixels/lab-planes.ts';
import { colourTrust, shadeFree } from './shade-free.ts';

// Read once, for the loop.
const [trusted, toMiddle] = [colourTrust, shadeFree];

const cellSize = 2;
const half = 64;
const side = 2 * half;

/** Cells of the shade-free a* b* plane that hold colour: mean place and weight of each. */
export interface ColourCells {
  readonly count: number;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly weight: Float64Array;
  /** Sum of the weights. */
  readonly total: number;
  /** Mean shade-free colour of the dark parts that can be trusted, for those that can't. */
  readonly shadow: readonly [a: number, b: number];
}

const place = (value: number): number =>
  Math.min(side - 1, Math.max(0, Math.floor(value / cellSize) + half));

/** L* between which dark parts tell the colour of darker ones. */
const [shadowFrom, shadowTo] = [12, 30] as const;

/** The picture's colours as a small weighted list, in fixed order. */
export function colourCells(planes: LabPlanes): ColourCells {
  const { lightness, a, b } = planes;
  const weights = new Float64Array(side * side);
  const sumsA = new Float64Array(side * side);
  const sumsB = new Float64Array(side * side);
  const shadow = [0, 0, 0] as [number, number, number];
  for (let i = 0; i < lightness.length; i++) {
    const l = lightness[i] as number;
    const trust = trusted(l);
    if (trust === 0) continue;
    const scale = toMiddle(l);
    const u = (a[i] as number) * scale;
    const v = (b[i] as number) * scale;
    const cell = place(v) * side + place(u);
    weights[cell] = (weights[cell] as number) + trust;
    sumsA[cell] = (sumsA[cell] as number) + trust * u;
    sumsB[cell] = (sumsB[cell] as number) + trust * v;
    if (l < shadowFrom || l > shadowTo) continue;
    shadow[0] += u;
    shadow[1] += v;
    shadow[2]++;
  }
  return packed(weights, sumsA, sumsB, shadow);
}

function packed(
  weights: Float64Array,
  sumsA: Float64Array,
  sumsB: Float64Array,
  [shadowA, shadowB, shadows]: readonly [number, number, number],
): ColourCells {
  const filled = [...weights.keys()].filter((cell) => weights[cell]);
  const weight = Float64Array.from(filled, (cell) => weights[cell] as number);
  const mean = (sums: Float64Array): Float64Array =>
    Float64Array.from(filled, (cell) => (sums[cell] as number) / (weights[cell] as number));
  const total = weight.reduce((sum, one) => sum + one, 0);
  const whole = (sums: Float64Array): number =>
    total ? sums.reduce((x, y) => x + y, 0) / total : 0;
  return {
    count: filled.length,
    a: mean(sumsA),
    b: mean(sumsB),
    weight,
    total,
    shadow: shadows ? [shadowA / shadows, shadowB / shadows] : [whole(sumsA), whole(sumsB)],
  };
}
