import type { Lab } from '../colour/lab.ts';
import { reserveChroma, reserveWithin } from '../limits.ts';
import { Correlation } from '../numeric/correlation.ts';
import { runToEnd } from '../numeric/run-to-end.ts';
import { directionOf } from '../paint/mix-neighbours.ts';
import type { WashPlan } from '../plan/plan.ts';
import { gaussianBlur } from '../raster/gaussian-blur.ts';
import type { LabPlanes } from '../raster/linear-raster.ts';
import { computePxPerMm, type PixelSize } from '../raster/size.ts';
import {
  type BandVerdict,
  type Drift,
  lightnessLimits,
  lightnessVerdict,
  type ShapeVerdict,
  type WhiteVerdict,
  type WholeVerdict,
} from './comparison.ts';
import { type MeasuredSheet, pixelStates } from './measured-sheet.ts';
import type { ShapeDifference } from './shape-differences.ts';

/** A colour that differs by less than this in a* and b* has not drifted (own): cameras are no truer. */
const driftFrom = 6;

/** How a colour has drifted along each of the trade's two ways, the farther first. */
export function driftOf(expected: Lab, measured: Lab): Drift[] {
  const [da, db] = [measured[1] - expected[1], measured[2] - expected[2]];
  if (Math.hypot(da, db) < driftFrom) return [];
  const along = (way: 'warmer' | 'clearer'): number => {
    const direction = directionOf(way, expected);
    return direction ? da * direction[0] + db * direction[1] : 0;
  };
  const [warm, clear] = [along('warmer'), along('clearer')];
  const ways: readonly (readonly [number, Drift])[] = [
    [warm, warm > 0 ? 'warmer' : 'cooler'],
    [clear, clear > 0 ? 'cleaner' : 'duller'],
  ];
  return ways
    .filter(([size]) => Math.abs(size) >= driftFrom / 2)
    .sort(([one], [two]) => Math.abs(two) - Math.abs(one))
    .map(([, way]) => way);
}

export const judgeShapes = (
  rows: readonly ShapeDifference[],
  { slots }: Pick<WashPlan, 'slots'>,
): ShapeVerdict[] =>
  rows.flatMap((row) => {
    const slot = slots[row.slot];
    if (!slot) return [];
    const { band, family, passage } = slot;
    const difference = row.measured[0] - row.expected[0];
    const drift = driftOf(row.expected, row.measured);
    return [
      { ...row, band, family, passage, difference, verdict: lightnessVerdict(difference), drift },
    ];
  });

/** The same by band, from all that was measured of it. */
export function judgeBands(shapes: readonly ShapeVerdict[]): BandVerdict[] {
  const bands = [...new Set(shapes.map(({ band }) => band))].sort((one, two) => one - two);
  return bands.map((band) => {
    let [share, expected, measured] = [0, 0, 0];
    for (const shape of shapes) {
      if (shape.band !== band) continue;
      share += shape.measuredShare;
      expected += shape.measuredShare * shape.expected[0];
      measured += shape.measuredShare * shape.measured[0];
    }
    const difference = (measured - expected) / share;
    return {
      band,
      share,
      expected: expected / share,
      measured: measured / share,
      difference,
      verdict: lightnessVerdict(difference),
    };
  });
}

/** Whites that are still paper, and those that have been painted over. */
export function judgeWhites(
  shapes: readonly ShapeVerdict[],
  { slots, paper }: Pick<WashPlan, 'slots' | 'paper'>,
  sheet: { readonly widthMm: number; readonly heightMm: number },
): WhiteVerdict[] {
  const whole = sheet.widthMm * sheet.heightMm;
  return shapes.flatMap(({ slot, at, share, measured }) => {
    if (!slots[slot]?.reserve) return [];
    const kept =
      measured[0] > paper[0] - reserveWithin - lightnessLimits.slight &&
      Math.hypot(measured[1] - paper[1], measured[2] - paper[2]) < reserveChroma;
    return [{ slot, at, areaMm2: share * whole, kept, measured }];
  });
}

/** Squinted at from across the room: blurred over so many mm of the sheet (own). */
const squintMm = 6;

function correlation(one: Float32Array, two: Float32Array, states: Uint8Array): number {
  const both = new Correlation();
  for (let i = 0; i < one.length; i += 3)
    if (states[i] !== pixelStates.missing) both.add(one[i], two[i]);
  return both.value();
}

/** Lightest and darkest twentieth of what counts. */
function rangeOf(plane: Float32Array, states: Uint8Array): readonly [number, number] {
  const every = new Float32Array(Math.ceil(plane.length / 7));
  let count = 0;
  for (let i = 0; i < plane.length; i += 7)
    if (states[i] === pixelStates.counts) every[count++] = plane[i];
  const some = every.subarray(0, count).sort();
  const part = (share: number): number => some[Math.floor(share * (count - 1))] ?? 0;
  return [part(0.95), part(0.05)];
}

/**
 * The whole sheet beside what was planned and beside the reference in grey, which is given as L* of every pixel as the
 * sheet is to have it in the end.
 */
export function judgeWhole(
  shapes: readonly ShapeVerdict[],
  expected: LabPlanes,
  measured: MeasuredSheet,
  reference: Float32Array | null,
  size: PixelSize,
  sheet: { readonly widthMm: number; readonly heightMm: number },
): WholeVerdict {
  let [all, within4, within8] = [0, 0, 0];
  for (const { measuredShare, difference } of shapes) {
    all += measuredShare;
    if (Math.abs(difference) < lightnessLimits.slight) within4 += measuredShare;
    if (Math.abs(difference) < lightnessLimits.clear) within8 += measuredShare;
  }
  const squinted = (plane: Float32Array): Float32Array => {
    const own = Float32Array.from(plane);
    runToEnd(gaussianBlur([own], size, squintMm * computePxPerMm(size, sheet)));
    return own;
  };
  const wanted = reference && squinted(reference);
  const like = (plane: Float32Array): number | null =>
    wanted && correlation(squinted(plane), wanted, measured.states);
  return {
    within4: all > 0 ? within4 / all : 0,
    within8: all > 0 ? within8 / all : 0,
    likeReference: like(measured.lightness),
    expectedLikeReference: like(expected.lightness),
    expectedRange: rangeOf(expected.lightness, measured.states),
    measuredRange: rangeOf(measured.lightness, measured.states),
  };
}
