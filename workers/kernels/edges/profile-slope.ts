import { placeOf, type SideCrossings } from './crossings.ts';
import { middle, samples } from './edge-profile.ts';
import { sortFew } from './sort-few.ts';

/**
 * Between two edges the slope falls below this part of the lesser of both: a deep valley at once, a
 * shallow one where it stands out from the noise by so many deviations.
 */
const valley = { deep: 0.65, shallow: 0.85, deviations: 2.5 } as const;
/** Where the slope at a contour and at the next one is looked for, samples about them. */
export const about = 3;

/** Slopes of one profile after another, L* a sample: where one edge ends and the next begins. */
export class ProfileSlope {
  readonly #slope = new Float64Array(samples);
  readonly #bends = new Float64Array(samples);
  #noise = 0;

  /** Slopes over about five samples, and their noise from how the profile bends at random. */
  read(values: Float64Array): void {
    const bends = this.#bends;
    const count = samples - 2;
    for (let k = 1; k <= count; k++) {
      const straight = ((values[k - 1] as number) + (values[k + 1] as number)) / 2;
      bends[k - 1] = Math.abs((values[k] as number) - straight);
    }
    sortFew(bends, count);
    // Median to deviation of normal noise, from bends to values, from values to slopes.
    this.#noise = (bends[count >> 1] as number) / 0.6745 / Math.sqrt(1.5) / 3;
    const at = (k: number): number => values[Math.min(samples - 1, Math.max(0, k))] as number;
    for (let k = 0; k < samples; k++) {
      this.#slope[k] = (at(k + 2) + at(k + 1) - at(k - 1) - at(k - 2)) / 6;
    }
  }

  /** The first contour on a side that is an edge of its own, as index; -1 where there is none. */
  nextEdge({ ways, count }: SideCrossings, side: 1 | -1): number {
    // The way the edge rises, from the slope right at the contour.
    const sign = this.#at(middle - 0.5) + this.#at(middle + 0.5) < 0 ? -1 : 1;
    for (let n = 0; n < count; n++) {
      const way = ways[n] as number;
      if (way < 3) continue;
      if (way >= samples / 2) return -1;
      const reach = Math.min(about, way / 2);
      const own = this.#steepest(middle - reach, middle + reach, sign);
      const place = placeOf(way, side);
      const up = this.#steepest(place - reach, place + reach, sign);
      const down = this.#steepest(place - reach, place + reach, sign > 0 ? -1 : 1);
      if (sign * this.#at(up) + sign * this.#at(down) < 0) return n;
      // Between the two steepest places: a single edge has no valley there, wherever it is crossed.
      const flattest = this.#steepest(Math.min(own, up), Math.max(own, up), sign > 0 ? -1 : 1);
      const least = sign * this.#at(flattest);
      const lesser = Math.min(sign * this.#at(own), sign * this.#at(up));
      const isClear = lesser - least > valley.deviations * this.#noise;
      const limit = isClear ? valley.shallow : valley.deep;
      if (least < limit * lesser) return n;
    }
    return -1;
  }

  #at(k: number): number {
    return this.#slope[k] as number;
  }

  /** Where slope times sign is largest between two places. */
  #steepest(from: number, to: number, sign: 1 | -1): number {
    const last = Math.min(samples - 1, Math.floor(to));
    let best = Math.min(last, Math.max(0, Math.ceil(from)));
    for (let k = best + 1; k <= last; k++) {
      if (sign * this.#at(k) > sign * this.#at(best)) best = k;
    }
    return best;
  }
}
