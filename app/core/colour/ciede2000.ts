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

/** S_L of the formula, for the mean L*. */
function lightnessScale(lightness: number): number {
  const fromMid = (lightness - 50) ** 2;
  return 1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid);
}

/** S_C of the formula, for the mean chroma. */
const chromaScale = (chroma: number): number => 1 + 0.045 * chroma;

/** S_H of the formula is 1 and this much per mean chroma and per T. */
const perHueWeight = 0.015;

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

/**
 * R_T of the formula without its factor of chroma, for the direction of the mean hue: 0 except in
 * the blues.
 */
function blueTurnOf(cos: number, sin: number): number {
  // The formula counts from hue 0 to 360 without closing the circle: hues of 0 to 90 degrees are
  // far from blue.
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
  const sl = lightnessScale(lightness);
  const sc = chromaScale(chroma);
  const sh = 1 + perHueWeight * chroma;
  const cos = chroma > 1e-9 ? a / chroma : 1;
  const sin = chroma > 1e-9 ? b / chroma : 0;
  return Float64Array.of(1 / sl, 0, 0, 0, cos / sc, sin / sc, 0, -sin / sh, cos / sh);
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

/**
 * The bound holds for mean hues within this many degrees of the colour's own hue: a mean hue lies
 * within 16 where the other hue is less than 32 degrees off, and within 90 for any other hue.
 */
const reaches = [16, 90] as const;
const cosOfNear = Math.cos(2 * reaches[0] * degree);

/**
 * The largest S_H - 1 per chroma, and the largest |R_T| without its factor of chroma, within
 * `reach` degrees.
 */
function largestAround(hue: number, reach: number): readonly [perChroma: number, turn: number] {
  let weight = 0;
  let turn = 0;
  for (let off = -reach; off <= reach; off++) {
    const angle = hue + off * degree;
    weight = Math.max(weight, hueWeight(Math.cos(angle), Math.sin(angle)));
    turn = Math.max(turn, -blueTurnOf(Math.cos(angle), Math.sin(angle)));
  }
  // A little more than found, for hues between the whole degrees.
  return [perHueWeight * weight + 0.0001, turn + 0.001];
}

/** Mean chromas that are tabulated for the quick bound, in whole units. */
const mostTabulated = 120;

/** By whole mean chroma: square of what the formula stretches a* by, at least. */
const leastStretch = Float64Array.from({ length: mostTabulated + 1 }, (_, c) => {
  return (1.5 - 0.5 * chromaShare(c + 1)) ** 2;
});

/**
 * A lower bound of CIEDE2000 to one fixed colour that needs no trigonometry: the terms that depend
 * on the mean hue are replaced by their largest value among the mean hues that are possible.
 */
export class DifferenceBound {
  readonly #l: number;
  readonly #a: number;
  readonly #b: number;
  readonly #chroma: number;
  readonly #near: readonly [perChroma: number, turn: number];
  readonly #far: readonly [perChroma: number, turn: number];

  /** By whole mean chroma, before it is stretched: what squares of distance, and of hue once more, add at least. */
  readonly #perApart: Float64Array;
  readonly #perHue: Float64Array;
  /** By whole difference in L*: the least squared difference it makes. */
  readonly #perOff: Float64Array;

  constructor([l, a, b]: Lab) {
    this.#l = l;
    this.#a = a;
    this.#b = b;
    this.#chroma = Math.hypot(a, b);
    // The formula stretches a*, by up to 1.5 times, and so turns the hue by less than 20 degrees.
    const hue = hueOf(a, b);
    const stretched = hueOf(1.5 * a, b);
    const between = (reach: number) => {
      const [one, two] = [largestAround(hue, reach), largestAround(stretched, reach)];
      return [Math.max(one[0], two[0]), Math.max(one[1], two[1])] as const;
    };
    this.#near = between(reaches[0]);
    this.#far = between(reaches[1]);
    this.#perApart = new Float64Array(mostTabulated + 1);
    this.#perHue = new Float64Array(mostTabulated + 1);
    // The last place, of all larger chromas, stays 0.
    for (let c = 0; c < mostTabulated; c++) {
      const most = (1.5 - 0.5 * chromaShare(c)) * (c + 1);
      const left = 1 - (this.#far[1] * chromaShare(most)) / 2;
      const scale = chromaScale(most);
      this.#perApart[c] = left / scale ** 2;
      this.#perHue[c] = left / Math.min(scale, 1 + this.#far[0] * most) ** 2 - this.#perApart[c];
    }
    this.#perOff = Float64Array.from({ length: 101 }, (_, off) => {
      const [up, down] = [l + (off + 1) / 2, l - (off + 1) / 2];
      const scale = Math.max(...[l, up, down].map(lightnessScale));
      return (off / scale) ** 2;
    });
  }

  /**
   * A bound of the squared difference to a colour of chroma `chroma`, lower than that of `isWithin` but hardly any work.
   * The square of the distance in the stretched plane is that of chroma and that of
   * hue together, so it is divided by the scale of chroma, and what is of hue counts by its own smaller scale.
   * Stretching a* makes neither less: (C1^2 + e x1^2)(C2^2 + e x2^2) is at least (C1 C2 + e x1 x2)^2.
   */
  leastSquared(l: number, a: number, b: number, chroma: number): number {
    const mean = Math.min(mostTabulated, ((this.#chroma + chroma) / 2) | 0);
    const off = Math.min(100, Math.abs(l - this.#l) | 0);
    const red = a - this.#a;
    const yellow = b - this.#b;
    const apart = red * red * leastStretch[mean] + yellow * yellow;
    const hue = 2 * (this.#chroma * chroma - a * this.#a - b * this.#b);
    return this.#perApart[mean] * apart + this.#perHue[mean] * hue + this.#perOff[off];
  }

  /**
   * Whether the difference to a colour may be the root of `squared` or less: false only where it
   * can't be.
   */
  isWithin(squared: number, l: number, a: number, b: number): boolean {
    const raw = (this.#chroma + Math.sqrt(a * a + b * b)) / 2;
    const stretch = 1.5 - 0.5 * chromaShare(raw);
    const x1 = this.#a * stretch;
    const x2 = a * stretch;
    const c1 = Math.sqrt(x1 * x1 + this.#b * this.#b);
    const c2 = Math.sqrt(x2 * x2 + b * b);
    const mean = (c1 + c2) / 2;
    const both = c1 * c2;
    const along = x1 * x2 + this.#b * b;
    const [perChroma, turn] = along > cosOfNear * both ? this.#near : this.#far;
    const c = Math.abs(c2 - c1) / chromaScale(mean);
    const leastH = Math.sqrt(Math.max(0, 2 * (both - along))) / (1 + perChroma * mean);
    // The true h is `leastH` or more, and what is summed falls with h until h is half of turn times
    // c.
    const turnC = turn * chromaShare(mean) * c;
    const h = Math.max(leastH, turnC / 2);
    const ofHue = c * c + h * h - turnC * h;
    if (ofHue > squared) return false;
    const dL = (l - this.#l) / lightnessScale((l + this.#l) / 2);
    return dL * dL + ofHue <= squared;
  }
}
