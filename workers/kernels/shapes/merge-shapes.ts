import type { Lab } from '../../../app/model/lab.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { KindTones } from './kind-tones.ts';
import {
  bandOfGroup,
  bandOfKind,
  brushedBand,
  groupOfKind,
  kindsAtMost,
  passageOfGroup,
} from './kinds.ts';
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

/**
 * Bands first, whatever the hues: a shape too small goes to the neighbour nearest in value of its own
 * passage.
 */
function* mergeBands(
  groups: Uint8Array,
  size: PixelSize,
  tones: KindTones,
  sizes: MergeSizes,
): Generator<void> {
  const lightness = Array.from(
    { length: 16 },
    (_, group) => tones.meanOf((kind) => bandOfKind(kind) === bandOfGroup(group))?.lab[0] ?? 0,
  );
  const leastPx = lightness.map((_, group) => {
    const band = bandOfGroup(group);
    if (band === brushedBand) return 0;
    const accent = band === sizes.darkestBand || sizes.whiteBands.has(band);
    return accent ? sizes.accentPx : sizes.shapePx;
  });
  const difference = (group: number, other: number): number => {
    const apart = passageOfGroup(group) !== passageOfGroup(other);
    // Her whites neither grow nor shrink.
    if (apart || bandOfGroup(group) === brushedBand || bandOfGroup(other) === brushedBand)
      return Number.POSITIVE_INFINITY;
    return steps(Math.abs((lightness[group] as number) - (lightness[other] as number)));
  };
  yield* mergeSmall(groups, size, { leastPx, difference });
}

/**
 * Merges shapes too small to paint, in place, in both maps. Values come first, so that hues never
 * decide where a band ends; then families within each band. Nothing crosses from passage to passage.
 */
export function* mergeShapes(
  kinds: Uint8Array,
  bands: Uint8Array,
  size: PixelSize,
  tones: KindTones,
  sizes: MergeSizes,
): Generator<void> {
  const groups = bands; // one map of that size serves for both
  for (let i = 0; i < groups.length; i++) groups[i] = groupOfKind(kinds[i] as number);
  yield* mergeBands(groups, size, tones, sizes);
  joinScarceKinds(kinds, groups, tones);
  for (let i = 0; i < bands.length; i++) bands[i] = bandOfGroup(groups[i] as number);
  yield;
  const colours = Array.from(
    { length: kindsAtMost },
    (_, kind) => tones.meanOf((k) => k === kind)?.lab ?? ([0, 0, 0] as const),
  );
  const difference = differences(tones, (kind, other) => {
    if (groupOfKind(kind) !== groupOfKind(other)) return Number.POSITIVE_INFINITY;
    const [l, a, b] = colours[kind] as Lab;
    const [m, c, d] = colours[other] as Lab;
    return steps(Math.hypot(l - m, a - c, b - d));
  });
  const leastPx = Float64Array.from({ length: kindsAtMost }, (_, kind) =>
    bandOfKind(kind) === brushedBand ? 0 : sizes.shapePx,
  );
  yield* mergeSmall(kinds, size, { leastPx, difference });
}
