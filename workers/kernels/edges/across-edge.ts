// One look across an edge: its neighbours told apart from it, its sides and width.
import { placeOf, type SideCrossings } from './crossings.ts';
import { middle, samples } from './edge-profile.ts';
import { widthOfSigma } from './normal-curve.ts';
import { about, ProfileSlope } from './profile-slope.ts';
import { sortFew } from './sort-few.ts';
import { StepFit } from './step-fit.ts';

/** Past a neighbour's place this many samples are taken in to know its far side. */
const pastNeighbour = 6;
/** So many samples of a side must lie clear of the edge for their median to be its value. */
const fewest = 4;
/** This many sigmas from an edge its tail is under 1 %. */
const clearSigmas = 2.5;

const half = samples / 2;

/** How far a side may be trusted where the next contour lies beyond the profile. */
function clearOf({ ways, count }: SideCrossings): number {
  for (let n = 0; n < count; n++) {
    const way = ways[n] as number;
    if (way >= half) return Math.min(half, (way + 1) / 2);
  }
  return half;
}

/** Reads one profile after another; units: L* and samples. */
export class AcrossEdge {
  /** Difference of the sides, L*, 0 or more, and blur of the edge, sigma in samples. */
  contrast = 0;
  sigma = 0;
  /** False where the profile is too short to hold the edge. */
  isWhole = true;
  readonly #fit = new StepFit();
  readonly #slope = new ProfileSlope();
  readonly #side = new Float64Array(samples);
  /** Range of the profile that counts: the edge's own and a little of its neighbours. */
  #from = 0;
  #to = samples;
  /** Neighbours' places, -1 where there is none. */
  #before = -1;
  #after = -1;
  /** Steps in the fit: the edge's own, and neighbours' too near to be cut off. */
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
    const far = Math.abs(place - middle) > Math.max(about, 2 * sigma);
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
    this.#from = Math.ceil(placeOf(before.room, -1));
    this.#to = Math.floor(placeOf(after.room, 1)) + 1;
    this.#cutBefore = before.room < half;
    this.#cutAfter = after.room < half;
    const left = this.#slope.nextEdge(before, -1);
    const right = this.#slope.nextEdge(after, 1);
    this.#from = Math.max(this.#from, Math.ceil(placeOf(clearOf(before), -1)));
    this.#to = Math.min(this.#to, Math.floor(placeOf(clearOf(after), 1)) + 1);
    if (left >= 0) {
      const place = placeOf(before.ways[left] as number, -1);
      this.#before = place;
      this.#cutBefore = true;
      this.#from = Math.max(this.#from, Math.ceil(place - this.#past(before, left)));
    }
    if (right >= 0) {
      const place = placeOf(after.ways[right] as number, 1);
      this.#after = place;
      this.#cutAfter = true;
      this.#to = Math.min(this.#to, Math.floor(place + this.#past(after, right)) + 1);
    }
  }

  #past({ ways, count, room }: SideCrossings, at: number): number {
    const next = at + 1 < count ? (ways[at + 1] as number) : room;
    return Math.min(pastNeighbour, Math.max(1, (next - (ways[at] as number)) / 2));
  }

  /** First guess: sides from the outer parts, width from where it passes 10 and 90 %. */
  #start(values: Float64Array): void {
    const first = this.#before >= 0 ? this.#before : this.#from;
    const last = this.#after >= 0 ? this.#after : this.#to - 1;
    const lowTo = Math.max(this.#from + 1, Math.ceil((first + middle) / 2));
    const highFrom = Math.min(this.#to - 1, Math.floor((last + middle) / 2));
    const low = this.#mean(values, Math.max(this.#from, Math.ceil(first)), lowTo);
    const high = this.#mean(values, highFrom, Math.min(this.#to, Math.floor(last) + 1));
    const rise = high - low;
    let place = middle;
    let left = Math.floor(middle);
    let right = Math.ceil(middle);
    if (Math.abs(rise) > 0.2) {
      const share = (k: number): number => ((values[k] as number) - low) / rise;
      while (left > this.#from && share(left) > 0.2) left--;
      while (right < this.#to - 1 && share(right) < 0.8) right++;
      place = (left + right) / 2;
    }
    const { unknowns } = this.#fit;
    unknowns[1] = Math.max(0.5, (right - left) / 2);
    unknowns[2] = rise;
    unknowns[3] = place;
    const clear = clearSigmas * (unknowns[1] as number);
    let at = 4;
    let base = low;
    if (this.#before >= 0 && place - this.#before > 2 * clear) {
      this.#from = Math.ceil(this.#before + clear);
    } else if (this.#before >= 0) {
      const far = this.#mean(values, this.#from, Math.floor(this.#before));
      unknowns[at++] = low - far;
      unknowns[at++] = this.#before;
      base = far;
    }
    if (this.#after >= 0 && this.#after - place > 2 * clear) {
      this.#to = Math.floor(this.#after - clear) + 1;
    } else if (this.#after >= 0) {
      const far = this.#mean(values, Math.ceil(this.#after) + 1, this.#to);
      unknowns[at++] = far - high;
      unknowns[at++] = this.#after;
    }
    unknowns[0] = base;
    this.#steps = at / 2 - 1;
  }

  /** Mean of values[from .. to - 1]; of the nearest one where that is nothing. */
  #mean(values: Float64Array, from: number, to: number): number {
    const first = Math.min(samples - 1, Math.max(0, from));
    const end = Math.max(first + 1, Math.min(samples, to));
    let sum = 0;
    for (let k = first; k < end; k++) sum += values[k] as number;
    return sum / (end - first);
  }

  /** Median of values[from .. to]; NaN where they are too few. */
  #median(values: Float64Array, from: number, to: number): number {
    const count = to - from + 1;
    if (!(count >= fewest)) return Number.NaN;
    const side = this.#side;
    for (let k = 0; k < count; k++) side[k] = values[from + k] as number;
    sortFew(side, count);
    const mid = count >> 1;
    return count % 2
      ? (side[mid] as number)
      : ((side[mid - 1] as number) + (side[mid] as number)) / 2;
  }
}
