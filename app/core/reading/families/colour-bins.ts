import type { LabPlanes } from '../../raster/linear-raster.ts';
import type { Surroundings } from './surroundings.ts';

// Light and shade on one surface scale its linear light, so they scale L* + 16, a* and b* alike (the
// cube-root part of CIE L*a*b*). Divided by L* + 16 a colour is the same in sun and in shade: one
// puddle at several strengths. The unit: a* and b* the colour would have at L* 50.
const atMiddle = 50 + 16;

/** Factor that takes a* and b* of a colour at L* 50 to what they would be at this L*. */
const shade = (lightness: number): number => (Math.max(0, lightness) + 16) / atMiddle;

/** Factor that takes a* and b* of a colour of this L* to what they would be at L* 50. */
export const shadeFree = (lightness: number): number => 1 / shade(lightness);

/** Below this L* a photo's colour is mostly noise and weighs nothing ... */
const blind = 10;
/** ... and from this on it counts in full (own; about 12 is where most cameras give up). */
const sure = 16;

/** How far the colour of a pixel of this L* can be trusted, 0..1. */
export function colourTrust(lightness: number): number {
  if (lightness >= sure) return 1;
  return lightness <= blind ? 0 : (lightness - blind) / (sure - blind);
}

// Read once, for the loop.
const [trusted, shadeOf] = [colourTrust, shade];

const cellSize = 2;
const perCell = 1 / cellSize;
const half = 64;
const side = 2 * half;

/** Cells of the shade-free a* b* plane that hold colour: mean place and weight of each. */
export interface ColourBins {
  readonly count: number;
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** How much its pixels are seen: those that stand out from what surrounds them count more. */
  readonly weight: Float64Array;
  /** Sum of the weights. */
  readonly total: number;
  /** Share of the pixels that count, 0..1, by how far their colour can be trusted; blends at borders are left out. */
  readonly share: Float64Array;
  /** Mean factor that takes shade-free differences to those of its pixels. */
  readonly shade: Float64Array;
  /** Mean shade-free colour of the dark parts that can be trusted, for those that can't. */
  readonly shadow: readonly [a: number, b: number];
}

/** Cutting off rounds numbers from -1 up to 0, which is the border; quicker than `Math.floor`. */
function place(value: number): number {
  const cell = (value * perCell + half) | 0;
  return cell < 0 ? 0 : cell < side ? cell : side - 1;
}

/** L* between which dark parts tell the colour of darker ones. */
const [shadowFrom, shadowTo] = [12, 30] as const;

/** A colour this far from its surroundings (a*, b*) counts double ... */
const doubledApart = 6;
/** ... and so does one of this C* (own, both). */
const doubledChroma = 20;
const [perApart, perChroma] = [1 / doubledApart, 1 / doubledChroma];

/** Where the colours so far to either side, mm, ... */
const blendMm = 1;
/** ... differ by this (a*, b*), a pixel is a blend at a border and nobody's own colour (own, both). */
const blendFrom = 12;
const blend = blendFrom * blendFrom;

/** Square of how far two pixels differ in a*, b*. */
function squareApart(a: Float32Array, b: Float32Array, one: number, other: number): number {
  const da = a[one] - a[other];
  const db = b[one] - b[other];
  return da * da + db * db;
}

/** What is summed up in a cell: weight and weighted place; what is no blend; trust by shade, and trust. */
const sumsPerCell = 6;

/** The pixels that count: where the map holds the value. */
export interface CountedPixels {
  readonly map: Uint8Array;
  readonly value: number;
}

/**
 * The picture's colours as a small weighted list, in fixed order. A pixel weighs by how it stands out from
 * what surrounds it and by its C*; all alike where the surroundings are not known.
 */
export function binColours(
  planes: LabPlanes,
  around: Surroundings | null = null,
  where: CountedPixels | null = null,
): ColourBins {
  const { lightness, a, b } = planes;
  const sums = new Float64Array(side * side * sumsPerCell);
  let [shadowA, shadowB, shadows] = [0, 0, 0];
  const reach = around ? Math.max(1, Math.round(blendMm * around.pxPerMm)) : 0;
  const { width, height } = around ? around.size : { width: lightness.length, height: 1 };
  const cellPx = around ? around.cellPx : 1;
  const aroundA = around ? around.a : a;
  const aroundB = around ? around.b : b;
  const isKnown = around !== null;
  const map = where ? where.map : null;
  const counted = where ? where.value : 0;
  let pixels = 0;
  for (let y = 0, i = 0; y < height; y++) {
    const line = around ? Math.floor(y / around.cellPx) * around.grid.width : 0;
    const up = y >= reach ? reach * width : 0;
    const down = y + reach < height ? reach * width : 0;
    for (let x = 0, near = line, left = cellPx; x < width; x++, i++, left--) {
      if (left === 0) {
        near++;
        left = cellPx;
      }
      if (map !== null && map[i] !== counted) continue;
      pixels++;
      const l = lightness[i];
      const trust = trusted(l);
      if (trust === 0) continue;
      const shade = shadeOf(l);
      const scale = 1 / shade;
      const own = a[i];
      const other = b[i];
      const u = own * scale;
      const v = other * scale;
      let weight = trust;
      let share = trust;
      if (isKnown) {
        const da = own - aroundA[near];
        const db = other - aroundB[near];
        weight *=
          1 +
          Math.sqrt(da * da + db * db) * perApart +
          Math.sqrt(own * own + other * other) * perChroma;
        const before = x >= reach ? i - reach : i;
        const after = x + reach < width ? i + reach : i;
        if (
          squareApart(a, b, before, after) > blend ||
          squareApart(a, b, i - up, i + down) > blend
        ) {
          share = 0;
        }
      }
      const cell = sumsPerCell * (place(v) * side + place(u));
      sums[cell] += weight;
      sums[cell + 1] += weight * u;
      sums[cell + 2] += weight * v;
      sums[cell + 3] += share;
      sums[cell + 4] += trust * shade;
      sums[cell + 5] += trust;
      if (l < shadowFrom || l > shadowTo) continue;
      shadowA += u;
      shadowB += v;
      shadows++;
    }
  }
  return packed(sums, pixels, [shadowA, shadowB, shadows]);
}

function packed(
  sums: Float64Array,
  pixels: number,
  [shadowA, shadowB, shadows]: readonly [number, number, number],
): ColourBins {
  const filled: number[] = [];
  for (let cell = 0; cell < sums.length; cell += sumsPerCell) if (sums[cell]) filled.push(cell);
  const weight = Float64Array.from(filled, (cell) => sums[cell]);
  const mean = (n: number, of: number): Float64Array =>
    Float64Array.from(filled, (cell) => sums[cell + n] / sums[cell + of]);
  const total = weight.reduce((sum, one) => sum + one, 0);
  const whole = (n: number): number =>
    total ? filled.reduce((sum, cell) => sum + sums[cell + n], 0) / total : 0;
  return {
    count: filled.length,
    a: mean(1, 0),
    b: mean(2, 0),
    weight,
    total,
    share: Float64Array.from(filled, (cell) => sums[cell + 3] / pixels),
    shade: mean(4, 5),
    shadow: shadows ? [shadowA / shadows, shadowB / shadows] : [whole(1), whole(2)],
  };
}
