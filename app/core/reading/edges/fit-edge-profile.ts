import { selectNth } from '../../numeric/filter-series.ts';
import { widthOfSigma } from '../../numeric/normal-curve.ts';
import {
  crossingPlace,
  profileMiddle,
  profileSamples,
  type SideCrossings,
} from './edge-profile.ts';
import { StepFit } from './fit-steps.ts';

/**
 * Between two edges the slope falls below this part of the lesser of both: a deep valley at once, a
 * shallow one where it stands out from the noise by so many deviations.
 */
const valley = { deep: 0.65, shallow: 0.85, deviations: 2.5 } as const;
/** The steepest place of an edge is sought within so many samples of its contour. */
const searchReach = 3;

/** Slopes of one profile after another, L* a sample: where one edge ends and the next begins. */
class ProfileSlope {
  readonly #slope = new Float64Array(profileSamples);
  readonly #bends = new Float64Array(profileSamples);
  #noise = 0;

  /** Slopes over about five samples, and their noise from how the profile bends at random. */
  read(values: Float64Array): void {
    const bends = this.#bends;
    const count = profileSamples - 2;
    for (let k = 1; k <= count; k++) {
      const straight = (values[k - 1] + values[k + 1]) / 2;
      bends[k - 1] = Math.abs(values[k] - straight);
    }
    selectNth(bends, count, count >> 1);
    // Median to deviation of normal noise, from bends to values, from values to slopes.
    this.#noise = bends[count >> 1] / 0.6745 / Math.sqrt(1.5) / 3;
    const slope = this.#slope;
    const last = profileSamples - 1;
    for (let k = 0; k <= last; k++) {
      const further = values[k + 2 < last ? k + 2 : last];
      const next = values[k < last ? k + 1 : last];
      slope[k] = (further + next - values[k > 0 ? k - 1 : 0] - values[k > 2 ? k - 2 : 0]) / 6;
    }
  }

  /** The first contour on a side that is an edge of its own, as index; -1 where there is none. */
  nextEdge({ distances, count }: SideCrossings, side: 1 | -1): number {
    const slope = this.#slope;
    // Whether the edge rises or falls, from the slope right at the contour.
    const sign = slope[profileMiddle - 0.5] + slope[profileMiddle + 0.5] < 0 ? -1 : 1;
    for (let n = 0; n < count; n++) {
      const distance = distances[n];
      if (distance < 3) continue;
      if (distance >= profileSamples / 2) return -1;
      const reach = Math.min(searchReach, distance / 2);
      const [first, last] = [Math.ceil(profileMiddle - reach), Math.floor(profileMiddle + reach)];
      const own = this.#steepest(first, last, sign);
      const place = crossingPlace(distance, side);
      const [before, after] = [Math.ceil(place - reach), Math.floor(place + reach)];
      const up = this.#steepest(before, after, sign);
      const down = this.#steepest(before, after, sign > 0 ? -1 : 1);
      if (sign * slope[up] + sign * slope[down] < 0) return n;
      // A single edge has no valley of its slope between the two steepest places.
      const flattest = this.#steepest(Math.min(own, up), Math.max(own, up), sign > 0 ? -1 : 1);
      const least = sign * slope[flattest];
      const lesser = Math.min(sign * slope[own], sign * slope[up]);
      const isClear = lesser - least > valley.deviations * this.#noise;
      const limit = isClear ? valley.shallow : valley.deep;
      if (least < limit * lesser) return n;
    }
    return -1;
  }

  /** Where slope times sign is largest between two places. */
  #steepest(from: number, to: number, sign: 1 | -1): number {
    const slope = this.#slope;
    const last = Math.min(profileSamples - 1, to);
    let best = Math.min(last, Math.max(0, from));
    for (let k = best + 1; k <= last; k++) {
      if (sign * slope[k] > sign * slope[best]) best = k;
    }
    return best;
  }
}

/** So many samples past a neighbouring edge are fitted too, to know its far side. */
const pastNeighbour = 6;
/** So many samples of a side must lie clear of the edge for their median to be its value. */
const fewest = 4;
/** This many sigmas from an edge its tail is under 1 %. */
const clearSigmas = 2.5;

const half = profileSamples / 2;

/** So many samples of a side can be trusted where the next contour lies beyond the profile. */
function trustedReach({ distances, count }: SideCrossings): number {
  for (let n = 0; n < count; n++) {
    if (distances[n] >= half) return Math.min(half, (distances[n] + 1) / 2);
  }
  return half;
}

/** Contrast and blur of the edge in one profile after another; units: L* and samples. */
export class EdgeProfileFit {
  /** Difference of the sides, L*, 0 or more, and blur of the edge, sigma in samples. */
  contrast = 0;
  sigma = 0;
  /** False where the profile is too short to hold the edge. */
  isWhole = true;
  readonly #fit = new StepFit();
  readonly #slope = new ProfileSlope();
  readonly #side = new Float64Array(profileSamples);
  /** Range of the profile that is fitted: the edge's own and a little of its neighbours. */
  #from = 0;
  #to = profileSamples;
  /** Neighbours' places, -1 where there is none. */
  #before = -1;
  #after = -1;
  /** Steps that are fitted: the edge's own, and those of neighbours too near to be cut off. */
  #steps = 1;
  #cutBefore = false;
  #cutAfter = false;

  read(values: Float64Array, before: SideCrossings, after: SideCrossings): void {
    this.#slope.read(values);
    this.#limit(before, after);
    this.#start(values);
    this.#fit.improve(values, this.#from, this.#to, this.#steps);
    const { place, sigma, rise } = this.#fit;
    this.sigma = sigma;
    const first = this.#before >= 0 ? this.#before : this.#from;
    const last = this.#after >= 0 ? this.#after : this.#to - 1;
    const far = Math.abs(place - profileMiddle) > Math.max(searchReach, 2 * sigma);
    const low = this.#median(
      values,
      Math.ceil(this.#before >= 0 ? first + widthOfSigma * sigma : first),
      Math.floor(place - widthOfSigma * sigma),
    );
    const high = this.#median(
      values,
      Math.ceil(place + widthOfSigma * sigma),
      Math.floor(this.#after >= 0 ? last - widthOfSigma * sigma : last),
    );
    this.contrast =
      Number.isFinite(low) && Number.isFinite(high) ? Math.abs(high - low) : Math.abs(rise);
    const shortBefore = !this.#cutBefore && place - first < 2 * sigma;
    const shortAfter = !this.#cutAfter && last - place < 2 * sigma;
    this.isWhole = !(shortBefore || shortAfter || far);
  }

  #limit(before: SideCrossings, after: SideCrossings): void {
    this.#before = -1;
    this.#after = -1;
    this.#from = Math.ceil(crossingPlace(before.room, -1));
    this.#to = Math.floor(crossingPlace(after.room, 1)) + 1;
    this.#cutBefore = before.room < half;
    this.#cutAfter = after.room < half;
    const left = this.#slope.nextEdge(before, -1);
    const right = this.#slope.nextEdge(after, 1);
    this.#from = Math.max(this.#from, Math.ceil(crossingPlace(trustedReach(before), -1)));
    this.#to = Math.min(this.#to, Math.floor(crossingPlace(trustedReach(after), 1)) + 1);
    if (left >= 0) {
      const place = crossingPlace(before.distances[left], -1);
      this.#before = place;
      this.#cutBefore = true;
      this.#from = Math.max(this.#from, Math.ceil(place - this.#past(before, left)));
    }
    if (right >= 0) {
      const place = crossingPlace(after.distances[right], 1);
      this.#after = place;
      this.#cutAfter = true;
      this.#to = Math.min(this.#to, Math.floor(place + this.#past(after, right)) + 1);
    }
  }

  /** So many samples past neighbour n are fitted: half the distance to what follows it, at most six. */
  #past({ distances, count, room }: SideCrossings, n: number): number {
    const next = n + 1 < count ? distances[n + 1] : room;
    return Math.min(pastNeighbour, Math.max(1, (next - distances[n]) / 2));
  }

  /** First guess: the sides from the outer parts, the width from where the profile passes 20 and 80 %. */
  #start(values: Float64Array): void {
    const first = this.#before >= 0 ? this.#before : this.#from;
    const last = this.#after >= 0 ? this.#after : this.#to - 1;
    const lowTo = Math.max(this.#from + 1, Math.ceil((first + profileMiddle) / 2));
    const highFrom = Math.min(this.#to - 1, Math.floor((last + profileMiddle) / 2));
    const low = this.#mean(values, Math.max(this.#from, Math.ceil(first)), lowTo);
    const high = this.#mean(values, highFrom, Math.min(this.#to, Math.floor(last) + 1));
    const rise = high - low;
    let place = profileMiddle;
    let left = Math.floor(profileMiddle);
    let right = Math.ceil(profileMiddle);
    if (Math.abs(rise) > 0.2) {
      while (left > this.#from && (values[left] - low) / rise > 0.2) left--;
      while (right < this.#to - 1 && (values[right] - low) / rise < 0.8) right++;
      place = (left + right) / 2;
    }
    const { unknowns } = this.#fit;
    unknowns[1] = Math.max(0.5, (right - left) / 2);
    unknowns[2] = rise;
    unknowns[3] = place;
    const clear = clearSigmas * unknowns[1];
    let next = 4;
    let base = low;
    if (this.#before >= 0 && place - this.#before > 2 * clear) {
      this.#from = Math.ceil(this.#before + clear);
    } else if (this.#before >= 0) {
      const far = this.#mean(values, this.#from, Math.floor(this.#before));
      unknowns[next++] = low - far;
      unknowns[next++] = this.#before;
      base = far;
    }
    if (this.#after >= 0 && this.#after - place > 2 * clear) {
      this.#to = Math.floor(this.#after - clear) + 1;
    } else if (this.#after >= 0) {
      const far = this.#mean(values, Math.ceil(this.#after) + 1, this.#to);
      unknowns[next++] = far - high;
      unknowns[next++] = this.#after;
    }
    unknowns[0] = base;
    this.#steps = next / 2 - 1;
  }

  /** Mean of values[from .. to - 1]; the nearest value where that range is empty. */
  #mean(values: Float64Array, from: number, to: number): number {
    const first = Math.min(profileSamples - 1, Math.max(0, from));
    const end = Math.max(first + 1, Math.min(profileSamples, to));
    let sum = 0;
    for (let k = first; k < end; k++) sum += values[k];
    return sum / (end - first);
  }

  /** Median of values[from .. to]; NaN where there are too few. */
  #median(values: Float64Array, from: number, to: number): number {
    const count = to - from + 1;
    if (!(count >= fewest)) return Number.NaN;
    const side = this.#side;
    for (let k = 0; k < count; k++) side[k] = values[from + k];
    const mid = count >> 1;
    selectNth(side, count, mid);
    if (count % 2) return side[mid];
    let before = side[0];
    for (let k = 1; k < mid; k++) before = Math.max(before, side[k]);
    return (before + side[mid]) / 2;
  }
}
