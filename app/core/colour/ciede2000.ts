import type { Lab } from './lab.ts';

const degree = Math.PI / 180;
const power25to7 = 25 ** 7;

const cos30 = Math.cos(30 * degree);
const cos6 = Math.cos(6 * degree);
const sin6 = Math.sin(6 * degree);
const cos63 = Math.cos(63 * degree);
const sin63 = Math.sin(63 * degree);
const cos275 = Math.cos(275 * degree);
const sin275 = Math.sin(275 * degree);

/** sqrt(c^7 / (c^7 + 25^7)). */
function chromaShare(c: number): number {
  const c3 = c * c * c;
  const c7 = c3 * c3 * c;
  return Math.sqrt(c7 / (c7 + power25to7));
}

/** T of the formula, for the direction of the mean hue. */
function hueWeight(cos: number, sin: number): number {
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

/** R_T of the formula but for the chroma's share, for the direction of the mean hue: 0 but for the blues. */
function blueTurnOf(cos: number, sin: number): number {
  // The formula counts from hue 0 to 360 without closing the circle: hues of 0 to 90 degrees are far from blue.
  if (cos >= 0 && sin >= 0) return 0;
  const nearness = cos * cos275 + sin * sin275;
  if (nearness < -0.5) return 0; // further than 120 degrees: under 1e-9
  const away = Math.atan2(sin * cos275 - cos * sin275, nearness) / degree;
  return -2 * Math.sin(60 * degree * Math.exp(-((away / 25) ** 2)));
}

/** Hue angle in radians, 0..2 pi. */
function hueOf(a: number, b: number): number {
  const h = Math.atan2(b, a);
  return h < 0 ? h + 2 * Math.PI : h;
}

/** Mean hue and half the turn from one hue to the other, as the standard has them; for nearly opposite hues. */
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
 * CIEDE2000 with kL = kC = kH = 1 between two CIE Lab colours. ISO/CIE 11664-6; written after Sharma,
 * Wu, Dalal (2005), Color Res. Appl. 30, 21-30. Symmetric, 0 for equal colours. At exactly opposite
 * hues the formula jumps by its own definition: rank only near colours by it.
 */
export function colourDifference(one: Lab, two: Lab): number {
  return differenceOf(one[0], one[1], one[2], two[0], two[1], two[2]);
}

/**
 * The same on bare numbers, for loops that must not allocate. Hues are kept as directions, so that no
 * angle has to be found but in the blues: the mean hue is the direction halfway, and 2 sqrt(C1 C2) sin(dh / 2)
 * is the cross product over the length of the half-way vector.
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

  const fromMid = ((l1 + l2) / 2 - 50) ** 2;
  const l = (l2 - l1) / (1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid));
  const c = (c2 - c1) / (1 + 0.045 * meanC2);
  const h = dH / (1 + 0.015 * meanC2 * hueWeight(cos, sin));
  const turn = blueTurnOf(cos, sin) * chromaShare(meanC2);
  return Math.sqrt(Math.max(0, l * l + c * c + h * h + turn * c * h));
}

/**
 * Rows that turn a small Lab difference near a colour into three parts of about equal weight to the
 * eye: lightness, chroma, hue, as CIEDE2000 weighs them (ISO/CIE 11664-6), without its turn in the
 * blues. Their squares sum to about its square. 3 x 3, row by row.
 */
export function seenDifference([lightness, a, b]: Lab): Float64Array {
  const chroma = Math.hypot(a, b);
  const fromMid = (lightness - 50) ** 2;
  const sl = 1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid);
  const sc = 1 + 0.045 * chroma;
  const sh = 1 + 0.015 * chroma;
  const cos = chroma > 1e-9 ? a / chroma : 1;
  const sin = chroma > 1e-9 ? b / chroma : 0;
  return Float64Array.of(1 / sl, 0, 0, 0, cos / sc, sin / sc, 0, -sin / sh, cos / sh);
}

/** Mean hues looked at are at most this far from the colour's own: for hues under 32 degrees off, and for all. */
const reaches = [16, 90] as const;
const cosOfNear = Math.cos(2 * reaches[0] * degree);

/** The largest S_H - 1 per chroma, and the largest |R_T| but for the chroma's share, of hues so near. */
function largestAround(hue: number, reach: number): readonly [perChroma: number, turn: number] {
  let weight = 0;
  let turn = 0;
  for (let off = -reach; off <= reach; off++) {
    const at = hue + off * degree;
    weight = Math.max(weight, hueWeight(Math.cos(at), Math.sin(at)));
    turn = Math.max(turn, -blueTurnOf(Math.cos(at), Math.sin(at)));
  }
  return [0.015 * weight + 0.0001, turn + 0.001]; // a little more, for hues between the whole degrees
}

// Read once, for the loop.
const share = chromaShare;

/**
 * How far colours are at least from one colour, in CIEDE2000, without an angle: the weights that depend on
 * the hue are taken at their largest for the hues that may lie midway.
 */
export class DifferenceBound {
  readonly #l: number;
  readonly #a: number;
  readonly #b: number;
  readonly #chroma: number;
  readonly #near: readonly [perChroma: number, turn: number];
  readonly #far: readonly [perChroma: number, turn: number];

  constructor([l, a, b]: Lab) {
    this.#l = l;
    this.#a = a;
    this.#b = b;
    this.#chroma = Math.hypot(a, b);
    const hue = hueOf(a, b); // turned a little by the formula's stretch of a*: less than 20 degrees
    const stretched = hueOf(1.5 * a, b);
    const between = (reach: number) => {
      const [one, two] = [largestAround(hue, reach), largestAround(stretched, reach)];
      return [Math.max(one[0], two[0]), Math.max(one[1], two[1])] as const;
    };
    this.#near = between(reaches[0]);
    this.#far = between(reaches[1]);
  }

  /** Whether the difference may be as small as the root of `squared`; false only where it can't. */
  isWithin(squared: number, l: number, a: number, b: number): boolean {
    const raw = (this.#chroma + Math.sqrt(a * a + b * b)) / 2;
    const stretch = 1.5 - 0.5 * share(raw);
    const x1 = this.#a * stretch;
    const x2 = a * stretch;
    const c1 = Math.sqrt(x1 * x1 + this.#b * this.#b);
    const c2 = Math.sqrt(x2 * x2 + b * b);
    const mean = (c1 + c2) / 2;
    const both = c1 * c2;
    const along = x1 * x2 + this.#b * b;
    const [perChroma, turn] = along > cosOfNear * both ? this.#near : this.#far;
    const c = Math.abs(c2 - c1) / (1 + 0.045 * mean);
    const h = Math.sqrt(Math.max(0, 2 * (both - along))) / (1 + perChroma * mean);
    const ofHue = c * c + h * h - turn * share(mean) * c * h;
    if (ofHue > squared) return false;
    const fromMid = ((l + this.#l) / 2 - 50) ** 2;
    const dL = (l - this.#l) / (1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid));
    return dL * dL + ofHue <= squared;
  }
}
