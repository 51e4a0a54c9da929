import type { Lab } from '../../../app/model/lab.ts';
import { blueTurnOf, chromaShare, hueOf, hueWeight } from '../optics/colour-difference.ts';

const degree = Math.PI / 180;

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
export class NearDifference {
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
