import {
  blueTurnOf,
  chromaScale,
  chromaShare,
  degree,
  differenceOfStretched,
  hueOf,
  hueWeight,
  lightnessScale,
  perHueWeight,
} from './ciede2000.ts';
import type { Lab } from './lab.ts';

/**
 * The bound holds for mean hues within this many degrees of the colour's own hue: a mean hue lies
 * within 16 where the other hue is less than 32 degrees off, and within 90 for any other hue.
 */
const reaches = [16, 90] as const;
const cosOfNear = Math.cos(2 * reaches[0] * degree);
/** Before a* is stretched, by up to 1.5 times: that turns one hue off another by up to as much. */
const cosBeforeStretch = Math.cos((2 * reaches[0] * degree) / 1.5);

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
const tabulated = mostTabulated + 1;

/** By whole mean chroma: square of what the formula stretches a* by, at least. */
const leastStretch = Float64Array.from({ length: tabulated }, (_, c) => {
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

  /**
   * By whole mean chroma, before it is stretched: what squares of distance, and of hue once more, add at least; for any
   * hue, then for near ones.
   */
  readonly #perApart = new Float64Array(2 * tabulated);
  readonly #perHue = new Float64Array(2 * tabulated);
  /** By whole difference in L*: the least squared difference it makes. */
  readonly #perOff: Float64Array;

  constructor([l, a, b]: Lab) {
    this.#l = l;
    this.#a = a;
    this.#b = b;
    this.#chroma = Math.sqrt(a * a + b * b);
    // The formula stretches a*, by up to 1.5 times, and so turns the hue by less than 20 degrees.
    const hue = hueOf(a, b);
    const stretched = hueOf(1.5 * a, b);
    const between = (reach: number) => {
      const [one, two] = [largestAround(hue, reach), largestAround(stretched, reach)];
      return [Math.max(one[0], two[0]), Math.max(one[1], two[1])] as const;
    };
    this.#near = between(reaches[0]);
    this.#far = between(reaches[1]);
    for (const [n, [perChroma, turn]] of [this.#far, this.#near].entries()) {
      // The last place, of all larger chromas, stays 0.
      for (let c = 0; c < mostTabulated; c++) {
        const most = (1.5 - 0.5 * chromaShare(c)) * (c + 1);
        const left = 1 - (turn * chromaShare(most)) / 2;
        const scale = chromaScale(most);
        const apart = left / scale ** 2;
        this.#perApart[n * tabulated + c] = apart;
        this.#perHue[n * tabulated + c] = left / Math.min(scale, 1 + perChroma * most) ** 2 - apart;
      }
    }
    this.#perOff = Float64Array.from({ length: 101 }, (_, off) => {
      const [up, down] = [l + (off + 1) / 2, l - (off + 1) / 2];
      const scale = Math.max(...[l, up, down].map(lightnessScale));
      return (off / scale) ** 2;
    });
  }

  /**
   * A bound of the squared difference to a colour of chroma `chroma`, from hardly any work.
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
    const both = this.#chroma * chroma;
    const along = a * this.#a + b * this.#b;
    const place = along > cosBeforeStretch * both ? tabulated + mean : mean;
    return (
      this.#perApart[place] * apart + this.#perHue[place] * 2 * (both - along) + this.#perOff[off]
    );
  }

  /**
   * The difference to a colour, as `differenceOf` gives it; Infinity only where it is more than `most`, as soon as that
   * is seen.
   */
  differenceUpTo(most: number, l: number, a: number, b: number): number {
    // Rounded up: what is compared with it is rounded too.
    const squared = most * most * (1 + 1e-12);
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
    const dL = (l - this.#l) / lightnessScale((l + this.#l) / 2);
    if (dL * dL + ofHue > squared) return Number.POSITIVE_INFINITY;
    return differenceOfStretched(this.#l, x1, this.#b, c1, l, x2, b, c2, squared, turn);
  }
}
