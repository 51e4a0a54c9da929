import type { LabPlanes } from '../../raster/linear-raster.ts';

// Light and shade on one surface scale its linear light, so they scale L* + 16, a* and b* alike (the
// cube-root part of CIE L*a*b*). Divided by L* + 16 a colour is the same in sun and in shade: one
// puddle at several strengths. The unit: a* and b* the colour would have at L* 50.
const atMiddle = 50 + 16;

/** Factor that takes a* and b* of a colour of this L* to what they would be at L* 50. */
export const shadeFree = (lightness: number): number => atMiddle / (Math.max(0, lightness) + 16);

/** Below this L* a photo's colour is mostly noise and weighs nothing ... */
const blind = 10;
/** ... and from this on it counts in full (own; about 12 is where most cameras give up). */
const sure = 16;

/** How far the colour of a pixel of this L* can be trusted, 0..1. */
export function colourTrust(lightness: number): number {
  const t = (lightness - blind) / (sure - blind);
  return t <= 0 ? 0 : Math.min(t, 1);
}

// Read once, for the loop.
const [trusted, toMiddle] = [colourTrust, shadeFree];

const cellSize = 2;
const half = 64;
const side = 2 * half;

/** Cells of the shade-free a* b* plane that hold colour: mean place and weight of each. */
export interface ColourBins {
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
export function binColours(planes: LabPlanes): ColourBins {
  const { lightness, a, b } = planes;
  const weights = new Float64Array(side * side);
  const sumsA = new Float64Array(side * side);
  const sumsB = new Float64Array(side * side);
  const shadow = [0, 0, 0] as [number, number, number];
  for (let i = 0; i < lightness.length; i++) {
    const l = lightness[i];
    const trust = trusted(l);
    if (trust === 0) continue;
    const scale = toMiddle(l);
    const u = a[i] * scale;
    const v = b[i] * scale;
    const cell = place(v) * side + place(u);
    weights[cell] = weights[cell] + trust;
    sumsA[cell] = sumsA[cell] + trust * u;
    sumsB[cell] = sumsB[cell] + trust * v;
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
): ColourBins {
  const filled = [...weights.keys()].filter((cell) => weights[cell]);
  const weight = Float64Array.from(filled, (cell) => weights[cell]);
  const mean = (sums: Float64Array): Float64Array =>
    Float64Array.from(filled, (cell) => sums[cell] / weights[cell]);
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
