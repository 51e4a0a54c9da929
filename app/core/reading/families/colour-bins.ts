import type { LabPlanes } from '../../raster/linear-raster.ts';
import type { Surroundings } from './surroundings.ts';

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

const place = (value: number): number =>
  Math.min(side - 1, Math.max(0, Math.floor(value / cellSize) + half));

/** L* between which dark parts tell the colour of darker ones. */
const [shadowFrom, shadowTo] = [12, 30] as const;

/** A colour this far from its surroundings (a*, b*) counts double ... */
const doubledApart = 6;
/** ... and so does one of this C* (own, both). */
const doubledChroma = 20;

/** Where the colours so far to either side, mm, ... */
const blendMm = 1;
/** ... differ by this (a*, b*), a pixel is a blend at a border and nobody's own colour (own, both). */
const blendFrom = 12;

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
  const shadow = [0, 0, 0] as [number, number, number];
  const reach = around ? Math.max(1, Math.round(blendMm * around.pxPerMm)) : 0;
  const { width, height } = around ? around.size : { width: lightness.length, height: 1 };
  const cellPx = around ? around.cellPx : 1;
  const aroundA = around ? around.a : a;
  const aroundB = around ? around.b : b;
  let pixels = 0;
  for (let y = 0, i = 0; y < height; y++) {
    const line = around ? Math.floor(y / around.cellPx) * around.grid.width : 0;
    const up = y >= reach ? reach * width : 0;
    const down = y + reach < height ? reach * width : 0;
    for (let x = 0; x < width; x++, i++) {
      if (where !== null && where.map[i] !== where.value) continue;
      pixels++;
      const l = lightness[i];
      const trust = trusted(l);
      if (trust === 0) continue;
      const scale = toMiddle(l);
      const own = a[i];
      const other = b[i];
      const u = own * scale;
      const v = other * scale;
      let weight = trust;
      let share = trust;
      if (around !== null) {
        const near = line + ((x / cellPx) | 0);
        const da = own - aroundA[near];
        const db = other - aroundB[near];
        weight *=
          1 +
          Math.sqrt(da * da + db * db) / doubledApart +
          Math.sqrt(own * own + other * other) / doubledChroma;
        const left = x >= reach ? i - reach : i;
        const right = x + reach < width ? i + reach : i;
        const ha = a[left] - a[right];
        const hb = b[left] - b[right];
        const va = a[i - up] - a[i + down];
        const vb = b[i - up] - b[i + down];
        const blend = blendFrom * blendFrom;
        if (ha * ha + hb * hb > blend || va * va + vb * vb > blend) share = 0;
      }
      const cell = sumsPerCell * (place(v) * side + place(u));
      sums[cell] += weight;
      sums[cell + 1] += weight * u;
      sums[cell + 2] += weight * v;
      sums[cell + 3] += share;
      sums[cell + 4] += trust / scale;
      sums[cell + 5] += trust;
      if (l < shadowFrom || l > shadowTo) continue;
      shadow[0] += u;
      shadow[1] += v;
      shadow[2]++;
    }
  }
  return packed(sums, pixels, shadow);
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
