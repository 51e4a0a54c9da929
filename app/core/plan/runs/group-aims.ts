import { blurWithin } from '../../raster/gaussian-blur.ts';
import { onTheSheet } from '../../reading/tone-range.ts';
import type { Mix } from '../plan.ts';
import type { Group } from './group.ts';
import type { RunInput } from './run.ts';

/** A run takes at least so long from a tenth to nine tenths of its way, mm, by wash: a brush goes no finer (own). */
const runMm = [15, 10, 6] as const;
/** That way of an edge that is blurred, in standard deviations of the blur (of the normal distribution). */
const riseOfBlur = 2.56;
/** Under darker shapes a wash hardly heeds their own colours. */
const unfinishedWeight = 0.07;
/** What is to end under this, L*, one thick wash does not reach over a pale wash: ... */
const deepFrom = 35;
/** ... a wash goes on stronger under it already, so deep that each later one has so much left to darken, L* (own). */
const darkensBy = 11;

/** What the groups of a plan are to show, square by square. */
export class GroupAims {
  readonly #input: RunInput;
  /** L*, a*, b* every row is to have in the end: 3 a row. */
  readonly #wanted: Float64Array;

  constructor(input: RunInput) {
    this.#input = input;
    const { squares, slots, range } = input;
    this.#wanted = new Float64Array(3 * squares.slots.length);
    for (const [row, n] of squares.slots.entries()) {
      const slot = slots[n];
      if (!slot) continue;
      // What her wishes and lost edges changed for the slot holds for all its squares.
      const moved = slot.target[0] - onTheSheet(range, slot.lab[0]);
      this.#wanted[3 * row] = onTheSheet(range, squares.colours[3 * row]) + moved;
      for (const c of [1, 2] as const) {
        this.#wanted[3 * row + c] = squares.colours[3 * row + c] + slot.target[c] - slot.lab[c];
      }
    }
  }

  /** Standard deviation of the blur that makes the runs of a wash, in squares. */
  sigmaOf({ wash }: Mix): number {
    const mm = runMm[Math.min(wash, runMm.length) - 1];
    return mm / riseOfBlur / this.#input.squareMm;
  }

  /** L* a wash may go down to under a row that is to end dark, so that the washes to come reach it; infinite elsewhere. */
  #underDark({ wash }: Mix, row: number): number {
    const final = this.#wanted[3 * row];
    return final < deepFrom
      ? final + darkensBy * (this.#input.washes - wash)
      : Number.POSITIVE_INFINITY;
  }

  /** Whether a group says itself how it runs: it finishes shapes, or lies under darks that need more than its mix gives. */
  has({ rows, mix }: Group, finished: readonly number[]): boolean {
    return finished.length > 0 || rows.some((row) => this.#underDark(mix, row) < mix.expected[0]);
  }

  /**
   * L*, a*, b* a group is to show in every square: those of the shapes it finishes, carried on under darker ones, which
   * hardly count and are lifted to the mean of the finished.
   */
  of({ rows, mix }: Group, finished: ReadonlySet<number>) {
    const { across, down, squares, shares } = this.#input.squares;
    const wanted = this.#wanted;
    let [sum, share] = [0, 0];
    for (const row of finished) {
      sum += shares[row] * wanted[3 * row];
      share += shares[row];
    }
    const mean = share > 0 ? sum / share : mix.expected[0];
    const weights = new Float32Array(across * down);
    const aim = [0, 1, 2].map(() => new Float32Array(across * down));
    for (const row of rows) {
      const isFinished = finished.has(row);
      const weight = Math.max(0.01, shares[row]) * (isFinished ? 1 : unfinishedWeight);
      const square = squares[row];
      weights[square] = weights[square] + weight;
      const lightness = isFinished ? wanted[3 * row] : Math.min(mean, this.#underDark(mix, row));
      aim[0][square] = aim[0][square] + weight * lightness;
      for (const c of [1, 2]) aim[c][square] = aim[c][square] + weight * wanted[3 * row + c];
    }
    for (const plane of aim) {
      for (let i = 0; i < plane.length; i++) if (weights[i] > 0) plane[i] = plane[i] / weights[i];
    }
    blurWithin(aim, weights, { width: across, height: down }, this.sigmaOf(mix));
    return aim;
  }
}
