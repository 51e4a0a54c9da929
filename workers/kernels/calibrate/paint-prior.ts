import { bandCount } from '../optics/wavelengths.ts';

/** What is expected of a paint before it is measured. */
export interface PaintPrior {
  /** Expected natural logarithms of K, then of S: 72 numbers. */
  readonly centre: Float64Array;
  /** How far each lies from it, as one over the variance: 72 numbers. */
  readonly hold: Float64Array;
}

/** From band to band ln K and ln S change by about so much (the shipped table: K 0.1..0.7, S 0.05..0.4). */
const slopeOfK = 0.4;
const slopeOfS = 0.2;
/** Level of ln S at load 1 in the shipped table without the whites: mean, and twice the spread. */
const usualLogS = -3.9;
const spreadOfS = 1.3;
const spreadOfK = 4;
/** Neighbouring bands say nearly the same: 36 bands count as so many. */
const ownBands = 2;

/**
 * The usual paint: K near `logK` (36 natural logarithms, held loosely), S as pigments have it at that
 * load. `logLoad` is ln of the load of one unit of amount.
 */
export const usualPaint = (logK: Float64Array, logLoad: number): PaintPrior =>
  priorAround(logK, usualLogS + logLoad);

/** A white: S about 1 a load, and a load is about one unit of amount, for its steps on paper can't tell. */
export const whitePaint = (logK: Float64Array): PaintPrior => priorAround(logK, 0);

function priorAround(logK: Float64Array, logS: number): PaintPrior {
  const centre = new Float64Array(2 * bandCount);
  const hold = new Float64Array(2 * bandCount);
  const share = ownBands / bandCount;
  for (let i = 0; i < bandCount; i++) {
    centre[i] = logK[i] as number;
    hold[i] = share / spreadOfK ** 2;
    centre[bandCount + i] = logS;
    hold[bandCount + i] = share / spreadOfS ** 2;
  }
  return { centre, hold };
}

/** Adds the prior's part to the normal equations of one paint (its 72 logarithms come first); returns its cost. */
export function addPrior(
  { centre, hold }: PaintPrior,
  logs: Float64Array,
  matrix: Float64Array,
  right: Float64Array,
  size: number,
): number {
  let cost = 0;
  const add = (row: number, column: number, value: number): void => {
    matrix[row * size + column] = (matrix[row * size + column] as number) + value;
  };
  for (let i = 0; i < 2 * bandCount; i++) {
    const weight = hold[i] as number;
    const off = (logs[i] as number) - (centre[i] as number);
    add(i, i, weight);
    right[i] = (right[i] as number) - weight * off;
    cost += weight * off * off;
    if (i % bandCount === bandCount - 1) continue;
    const smooth = 1 / (i < bandCount ? slopeOfK : slopeOfS) ** 2;
    const step = (logs[i + 1] as number) - (logs[i] as number);
    add(i, i, smooth);
    add(i + 1, i + 1, smooth);
    add(i, i + 1, -smooth);
    add(i + 1, i, -smooth);
    right[i] = (right[i] as number) + smooth * step;
    right[i + 1] = (right[i + 1] as number) - smooth * step;
    cost += smooth * step * step;
  }
  return cost;
}
