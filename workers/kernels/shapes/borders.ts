import type { Border } from '../../../app/model/reading.ts';
import type { PixelSize } from '../../../app/model/reference.ts';
import { borderNormal } from './border-normal.ts';
import { BorderLooks } from './border-profile.ts';

/** Under this difference of lightness a border is lost, L*. */
const lostBelow = 4;
/** Wider than this it is soft, % of the long side. */
const softAbove = 0.6;
/** A border that rises less than this per 1 % of the long side is lost too, L*. */
const lostSlope = 1;
/** How far to look, % of the long side. */
const reachShare = 1.5;
/** The photo's own blur is taken from borders of at least this contrast, L* ... */
const plainContrast = 15;
/** ... and never taken larger than this, px (sigma), or a soft picture would count as hard. */
const mostBlurPx = 1.5;
/** From 10 % to 90 % of a blurred step, in sigmas of the blur. */
const widthOfSigma = 2.563;
/** Every how many pixel sides of a border one is looked across. */
const everyPx = 3;

interface Looks {
  readonly pairs: Uint16Array;
  readonly contrasts: Float32Array;
  readonly widths: Float32Array;
  /** Pixel sides of every pair of slots, by the pair's number. */
  readonly sides: Uint32Array;
}

/** One number for two slots, whichever comes first. */
const pairOf = (one: number, other: number): number =>
  one < other ? one * 256 + other : other * 256 + one;

/** Calls `meet` for every pair of pixels side by side in different slots; dx, dy is the step. */
function eachSide(
  slots: Uint8Array,
  { width, height }: PixelSize,
  row: number,
  meet: (x: number, y: number, dx: 0 | 1, dy: 0 | 1, one: number, other: number) => void,
): void {
  for (let x = 0, i = row * width; x < width; x++, i++) {
    const slot = slots[i] as number;
    if (x + 1 < width && slots[i + 1] !== slot) meet(x, row, 1, 0, slot, slots[i + 1] as number);
    if (row + 1 < height && slots[i + width] !== slot) {
      meet(x, row, 0, 1, slot, slots[i + width] as number);
    }
  }
}

function* lookAcross(
  slots: Uint8Array,
  lightness: Float32Array,
  size: PixelSize,
): Generator<void, Looks> {
  const sides = new Uint32Array(65536);
  let count = 0;
  for (let y = 0; y < size.height; y++) {
    eachSide(slots, size, y, (_x, _y, _dx, _dy, one, other) => {
      const pair = pairOf(one, other);
      if ((sides[pair] as number) % everyPx === 0) count++;
      sides[pair] = (sides[pair] as number) + 1;
    });
  }
  yield;
  const pairs = new Uint16Array(count);
  const contrasts = new Float32Array(count);
  const widths = new Float32Array(count);
  const reach = Math.ceil((Math.max(size.width, size.height) * reachShare) / 100);
  const looks = new BorderLooks(lightness, slots, size, reach);
  const normal = new Float64Array(2);
  sides.fill(0);
  let at = 0;
  for (let y = 0; y < size.height; y++) {
    eachSide(slots, size, y, (x, row, dx, dy, one, other) => {
      const pair = pairOf(one, other);
      const seen = sides[pair] as number;
      sides[pair] = seen + 1;
      if (seen % everyPx !== 0) return;
      borderNormal(slots, size, x, row, dx, dy, normal);
      const look = looks.across(x + dx / 2, row + dy / 2, normal[0] as number, normal[1] as number);
      pairs[at] = pair;
      contrasts[at] = look.contrast;
      widths[at] = look.widthPx;
      at++;
    });
    if (y % 64 === 63) yield;
  }
  return { pairs, contrasts, widths, sides };
}

/** The photo's own blur, sigma in px: the sharpest tenth of its plain borders. */
function ownBlur({ contrasts, widths }: Looks): number {
  const plain = widths.filter((_, i) => (contrasts[i] as number) >= plainContrast).sort();
  if (plain.length === 0) return 0;
  return Math.min(mostBlurPx, (plain[Math.floor(plain.length / 10)] as number) / widthOfSigma);
}

/**
 * Where slots meet: length on the sheet, mean difference across, how much of it is soft and how much
 * lost. `lightness` is the unsimplified L* of every pixel. Order: by the lower, then the other slot.
 * Widths: edge width from a profile across the border, the photo's own blur taken off in quadrature
 * (Elder, Zucker, 'Local Scale Control for Edge Detection and Blur Estimation', 1998, for the model).
 */
export function* bordersOf(
  slots: Uint8Array,
  lightness: Float32Array,
  size: PixelSize,
  pxPerMm: number,
): Generator<void, Border[]> {
  const looks = yield* lookAcross(slots, lightness, size);
  const blurWidth = widthOfSigma * ownBlur(looks);
  const percent = 100 / Math.max(size.width, size.height);
  const sums = new Map<number, { looks: number; contrast: number; soft: number; lost: number }>();
  for (let i = 0; i < looks.pairs.length; i++) {
    const pair = looks.pairs[i] as number;
    const sum = sums.get(pair) ?? { looks: 0, contrast: 0, soft: 0, lost: 0 };
    const contrast = looks.contrasts[i] as number;
    const width =
      Math.sqrt(Math.max(0, (looks.widths[i] as number) ** 2 - blurWidth ** 2)) * percent;
    const lost = contrast < lostBelow || (width > 0 && contrast / width < lostSlope);
    sum.looks++;
    sum.contrast += contrast;
    if (lost) sum.lost++;
    else if (width > softAbove) sum.soft++;
    sums.set(pair, sum);
  }
  return [...sums]
    .sort(([one], [other]) => one - other)
    .map(
      ([pair, sum]): Border => ({
        a: pair >> 8,
        b: pair & 255,
        // Pixel sides overstate slanting borders; pi / 4 is right on average over all directions.
        lengthMm: ((looks.sides[pair] as number) * (Math.PI / 4)) / pxPerMm,
        contrast: sum.contrast / sum.looks,
        soft: sum.soft / sum.looks,
        lost: sum.lost / sum.looks,
      }),
    );
}
