import type { Lab } from './lab.ts';

export const degree = Math.PI / 180;
const power25to7 = 25 ** 7;

const cos30 = Math.cos(30 * degree);
const cos6 = Math.cos(6 * degree);
const sin6 = Math.sin(6 * degree);
const cos63 = Math.cos(63 * degree);
const sin63 = Math.sin(63 * degree);
const cos275 = Math.cos(275 * degree);
const sin275 = Math.sin(275 * degree);

/** sqrt(c^7 / (c^7 + 25^7)). */
export function chromaShare(c: number): number {
  const c3 = c * c * c;
  const c7 = c3 * c3 * c;
  return Math.sqrt(c7 / (c7 + power25to7));
}

/** S_L of the formula, for the mean L*. */
export function lightnessScale(lightness: number): number {
  const fromMid = (lightness - 50) ** 2;
  return 1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid);
}

/** S_C of the formula, for the mean chroma. */
export const chromaScale = (chroma: number): number => 1 + 0.045 * chroma;

/** S_H of the formula is 1 and this much per mean chroma and per T. */
export const perHueWeight = 0.015;

/** T of the formula, for the direction of the mean hue. */
export function hueWeight(cos: number, sin: number): number {
  const cos2 = cos * cos - sin * sin;
  const sin2 = 2 * sin * cos;
  const cos3 = cos2 * cos - sin2 * sin;
  const sin3 = sin2 * cos + cos2 * sin;
  const cos4 = cos2 * cos2 - sin2 * sin2;
  const sin4 = 2 * sin2 * cos2;
  return (
    1 -
    0.17 * (cos * cos30 + sin * 0.5) +
    0.24 * cos2 +
    0.32 * (cos3 * cos6 - sin3 * sin6) -
    0.2 * (cos4 * cos63 + sin4 * sin63)
  );
}

/**
 * R_T of the formula without its factor of chroma, for the direction of the mean hue: 0 except in
 * the blues.
 */
export function blueTurnOf(cos: number, sin: number): number {
  // The formula counts from hue 0 to 360 without closing the circle: hues of 0 to 90 degrees are
  // far from blue.
  if (cos >= 0 && sin >= 0) return 0;
  const nearness = cos * cos275 + sin * sin275;
  if (nearness < -0.5) return 0; // further than 120 degrees: under 1e-9
  const away = Math.atan2(sin * cos275 - cos * sin275, nearness) / degree;
  return -2 * Math.sin(60 * degree * Math.exp(-((away / 25) ** 2)));
}

/** Hue angle in radians, 0..2 pi. */
export function hueOf(a: number, b: number): number {
  const h = Math.atan2(b, a);
  return h < 0 ? h + 2 * Math.PI : h;
}

/**
 * Mean hue and half the turn from one hue to the other, as the standard has them; for nearly
 * opposite hues.
 */
function hueByAngles(x1: number, b1: number, x2: number, b2: number) {
  const h1 = hueOf(x1, b1);
  const h2 = hueOf(x2, b2);
  let turn = h2 - h1;
  let mean = h1 + h2;
  if (Math.abs(turn) > Math.PI) {
    turn += turn > 0 ? -2 * Math.PI : 2 * Math.PI;
    mean += mean < 2 * Math.PI ? 2 * Math.PI : -2 * Math.PI;
  }
  return { mean: mean / 2, sinHalf: Math.sin(turn / 2) };
}

/**
 * CIEDE2000 with kL = kC = kH = 1 between two CIE Lab colours. ISO/CIE 11664-6; written after
 * Sharma, Wu, Dalal (2005), Color Res. Appl. 30, 21-30. Symmetric, 0 for equal colours. At exactly
 * opposite hues the formula jumps by its own definition: rank only near colours by it.
 */
export function colourDifference(one: Lab, two: Lab): number {
  return differenceOf(one[0], one[1], one[2], two[0], two[1], two[2]);
}

/**
 * `colourDifference` on bare numbers, for loops that must not allocate. Hues are kept as
 * directions, so that only the blues need an angle: the mean hue is the direction halfway, and 2
 * sqrt(C1 C2) sin(dh / 2) is the cross product over the length of the half-way vector.
 */
export function differenceOf(
  l1: number,
  a1: number,
  b1: number,
  l2: number,
  a2: number,
  b2: number,
): number {
  const meanC = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
  const g = 1.5 - 0.5 * chromaShare(meanC);
  const x1 = a1 * g;
  const x2 = a2 * g;
  const c1 = Math.sqrt(x1 * x1 + b1 * b1);
  const c2 = Math.sqrt(x2 * x2 + b2 * b2);
  return differenceOfStretched(l1, x1, b1, c1, l2, x2, b2, c2, Number.POSITIVE_INFINITY, 0);
}

/**
 * The rest of the formula, for stretched a* and the chromas with it. Infinity where the square of the difference is
 * found to be above `squared` before the turn of the blues is worked out, which without its factor of chroma is
 * `mostTurn` at most.
 */
export function differenceOfStretched(
  l1: number,
  x1: number,
  b1: number,
  c1: number,
  l2: number,
  x2: number,
  b2: number,
  c2: number,
  squared: number,
  mostTurn: number,
): number {
  const meanC2 = (c1 + c2) / 2;

  let halfX = x1 * c2 + x2 * c1;
  let halfB = b1 * c2 + b2 * c1;
  let dH = 0;
  if (c1 === 0 || c2 === 0) {
    halfX = x1 + x2; // a grey takes the other's hue
    halfB = b1 + b2;
  } else {
    const both = c1 * c2;
    const along = both + x1 * x2 + b1 * b2;
    if (along > 0.01 * both) {
      dH = ((x1 * b2 - x2 * b1) * Math.SQRT2) / Math.sqrt(along);
    } else {
      const { mean, sinHalf } = hueByAngles(x1, b1, x2, b2);
      halfX = Math.cos(mean);
      halfB = Math.sin(mean);
      dH = 2 * Math.sqrt(both) * sinHalf;
    }
  }
  const half = Math.sqrt(halfX * halfX + halfB * halfB);
  const cos = half > 0 ? halfX / half : 1;
  const sin = half > 0 ? halfB / half : 0;

  const l = (l2 - l1) / lightnessScale((l1 + l2) / 2);
  const c = (c2 - c1) / chromaScale(meanC2);
  const h = dH / (1 + perHueWeight * meanC2 * hueWeight(cos, sin));
  const share = chromaShare(meanC2);
  if (l * l + c * c + h * h - Math.max(0, mostTurn * share * c * h) > squared)
    return Number.POSITIVE_INFINITY;
  const turn = blueTurnOf(cos, sin) * share;
  return Math.sqrt(Math.max(0, l * l + c * c + h * h + turn * c * h));
}

/**
 * Rows that turn a small Lab difference near a colour into three parts of about equal weight to the
 * eye: lightness, chroma, hue, as CIEDE2000 weighs them (ISO/CIE 11664-6), without its turn in the
 * blues. Their squares sum to about its square. 3 x 3, row by row.
 */
export function seenDifference(lab: Lab): Float64Array {
  const out = new Float64Array(9);
  writeSeenDifference(lab, out);
  return out;
}

/** Writes `seenDifference` to `out`, for loops that must not allocate. */
export function writeSeenDifference([lightness, a, b]: Lab, out: Float64Array): void {
  const chroma = Math.sqrt(a * a + b * b);
  const sl = lightnessScale(lightness);
  const sc = chromaScale(chroma);
  const sh = 1 + perHueWeight * chroma;
  const cos = chroma > 1e-9 ? a / chroma : 1;
  const sin = chroma > 1e-9 ? b / chroma : 0;
  out[0] = 1 / sl;
  out[4] = cos / sc;
  out[5] = sin / sc;
  out[7] = -sin / sh;
  out[8] = cos / sh;
  out[1] = out[2] = out[3] = out[6] = 0;
}

/**
 * Colours whose L* differs by more than this from `lightness` are further than `difference`
 * (CIEDE2000) away. The formula is never under |dL*| / S_L, for what is left of it is a sum that
 * can't be negative (|R_T| < 2); S_L rises with the distance of the mean L* from 50 and is 1.75 at
 * most, so that the mean is within 0.875 differences of `lightness`.
 */
export function widestLightnessGap(lightness: number, difference: number): number {
  if (difference > 50) return 100;
  return difference * lightnessScale(50 + Math.abs(lightness - 50) + 0.875 * difference);
}
