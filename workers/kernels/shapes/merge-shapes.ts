import type { PixelSize } from '../../../app/model/reference.ts';
import type { KindTones } from './kind-tones.ts';
import { bandOfKind, familiesPerBand, familyOfKind, kindOf, kindsAtMost } from './kinds.ts';
import { mergeSmall } from './merge-small.ts';

/** Differences are told apart in steps of this, so that within a step the longer border decides. */
const differenceStep = 4;

export interface MergeSizes {
  /** Shapes under this are merged, px; whites and the darkest under `accentPx`. */
  readonly shapePx: number;
  readonly accentPx: number;
  /** Bands planned so near to the paper that they may stay white. */
  readonly whiteBands: ReadonlySet<number>;
  readonly darkestBand: number;
}

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
 * The kinds after merging put bands together: where a band took over pixels of a family it had
 * none of, the family of that band nearest in colour takes them.
 */
function rejoin(kinds: Uint8Array, bands: Uint8Array, tones: KindTones): void {
  const means = Array.from({ length: kindsAtMost }, (_, kind) => tones.meanOf((k) => k === kind));
  const familyMeans = Array.from({ length: familiesPerBand }, (_, family) =>
    tones.meanOf((kind) => familyOfKind(kind) === family),
  );
  const instead = Uint8Array.from({ length: kindsAtMost }, (_, kind) => {
    if (means[kind]) return kind;
    const [, a, b] = familyMeans[familyOfKind(kind)]?.lab ?? [0, 0, 0];
    let best = kind;
    let least = Number.POSITIVE_INFINITY;
    for (let family = 0; family < familiesPerBand; family++) {
      const other = kindOf(bandOfKind(kind), family);
      const lab = means[other]?.lab;
      if (!lab) continue;
      const distance = Math.hypot(lab[1] - a, lab[2] - b);
      if (distance >= least) continue;
      least = distance;
      best = other;
    }
    return best;
  });
  for (let i = 0; i < kinds.length; i++) {
    const family = familyOfKind(kinds[i] as number);
    kinds[i] = instead[kindOf(bands[i] as number, family)] as number;
  }
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
  rejoin(kinds, bands, tones);
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
