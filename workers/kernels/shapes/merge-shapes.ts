import type { PixelSize } from '../../../app/model/reference.ts';
import type { KindTones } from './kind-tones.ts';
import { bandOfKind, kindsAtMost } from './kinds.ts';
import type { MergeSizes } from './merge-sizes.ts';
import { mergeSmall } from './merge-small.ts';
import { joinScarceKinds } from './scarce-kinds.ts';

/** Differences are told apart in steps of this, so that within a step the longer border decides. */
const differenceStep = 4;

const steps = (difference: number): number => Math.round(difference / differenceStep);

/** Differences between all kinds, kinds x kinds, from `of`; infinite where one has no pixels. */
function differences(
  tones: KindTones,
  of: (kind: number, other: number) => number,
): (kind: number, other: number) => number {
  const has = Array.from({ length: kindsAtMost }, (_, kind) => tones.meanOf((k) => k === kind));
  const table = new Float64Array(kindsAtMost * kindsAtMost).fill(Number.POSITIVE_INFINITY);
  for (let kind = 0; kind < kindsAtMost; kind++) {
    for (let other = 0; other < kindsAtMost; other++) {
      if (has[kind] && has[other]) table[kind * kindsAtMost + other] = of(kind, other);
    }
  }
  return (kind, other) => table[kind * kindsAtMost + other] as number;
}

/** Bands first, whatever the hues: a shape too small goes to the neighbour nearest in value. */
function* mergeBands(
  bands: Uint8Array,
  size: PixelSize,
  tones: KindTones,
  sizes: MergeSizes,
): Generator<void> {
  const lightness = Array.from(
    { length: 9 },
    (_, band) => tones.meanOf((kind) => bandOfKind(kind) === band)?.lab[0] ?? 0,
  );
  const leastPx = lightness.map((_, band) =>
    band === sizes.darkestBand || sizes.whiteBands.has(band) ? sizes.accentPx : sizes.shapePx,
  );
  const difference = (band: number, other: number): number =>
    steps(Math.abs((lightness[band] as number) - (lightness[other] as number)));
  yield* mergeSmall(bands, size, { leastPx, difference });
}

/**
 * Merges shapes too small to paint, in place, in both maps. Values come first, so that hues never
 * decide where a band ends; then families within each band.
 */
export function* mergeShapes(
  kinds: Uint8Array,
  bands: Uint8Array,
  size: PixelSize,
  tones: KindTones,
  sizes: MergeSizes,
): Generator<void> {
  yield* mergeBands(bands, size, tones, sizes);
  joinScarceKinds(kinds, bands, tones);
  yield;
  const colour = (kind: number): readonly [number, number, number] =>
    tones.meanOf((k) => k === kind)?.lab ?? [0, 0, 0];
  const difference = differences(tones, (kind, other) => {
    if (bandOfKind(kind) !== bandOfKind(other)) return Number.POSITIVE_INFINITY;
    const [l, a, b] = colour(kind);
    const [m, c, d] = colour(other);
    return steps(Math.hypot(l - m, a - c, b - d));
  });
  const leastPx = new Float64Array(kindsAtMost).fill(sizes.shapePx);
  yield* mergeSmall(kinds, size, { leastPx, difference });
}
