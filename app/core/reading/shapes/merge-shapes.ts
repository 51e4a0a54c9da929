import { reserveWithin, smallestShapeMm } from '../../limits.ts';
import { mergeSmall } from '../../raster/merge-small.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { ToneRange } from '../reading.ts';
import { plannedLightness } from '../tone-range.ts';
import {
  bandOfCell,
  bandOfGroup,
  brushedBand,
  type CellTones,
  familiesPerBand,
  familyOfCell,
  groupOfCell,
  type MeanTones,
  maxCells,
  packCell,
  passageOfGroup,
} from './cells.ts';

/** Differences are told apart in steps of this, so that within a step the longer border decides. */
const differenceStep = 4;

const steps = (difference: number): number => Math.round(difference / differenceStep);

/** Differences between all kinds, kinds x kinds, from `of`; infinite where one has no pixels. */
function differences(
  tones: CellTones,
  of: (kind: number, other: number) => number,
): (kind: number, other: number) => number {
  const has = Array.from({ length: maxCells }, (_, kind) => tones.meanOf((k) => k === kind));
  const table = new Float64Array(maxCells * maxCells).fill(Number.POSITIVE_INFINITY);
  for (let kind = 0; kind < maxCells; kind++) {
    for (let other = 0; other < maxCells; other++) {
      if (has[kind] && has[other]) table[kind * maxCells + other] = of(kind, other);
    }
  }
  return (kind, other) => table[kind * maxCells + other];
}

/**
 * Bands first, whatever the hues: a shape too small goes to the neighbour nearest in value of its own
 * passage.
 */
function* mergeBands(
  groups: Uint8Array,
  size: PixelSize,
  tones: CellTones,
  sizes: MergeSizes,
): Generator<void> {
  const lightness = Array.from(
    { length: 16 },
    (_, group) => tones.meanOf((kind) => bandOfCell(kind) === bandOfGroup(group))?.lab[0] ?? 0,
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
    return steps(Math.abs(lightness[group] - lightness[other]));
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
  tones: CellTones,
  sizes: MergeSizes,
): Generator<void> {
  const groups = bands; // one map of that size serves for both
  for (let i = 0; i < groups.length; i++) groups[i] = groupOfCell(kinds[i]);
  yield* mergeBands(groups, size, tones, sizes);
  joinScarceCells(kinds, groups, tones);
  for (let i = 0; i < bands.length; i++) bands[i] = bandOfGroup(groups[i]);
  yield;
  const colours = Array.from(
    { length: maxCells },
    (_, kind) => tones.meanOf((k) => k === kind)?.lab ?? ([0, 0, 0] as const),
  );
  const difference = differences(tones, (kind, other) => {
    if (groupOfCell(kind) !== groupOfCell(other)) return Number.POSITIVE_INFINITY;
    const [l, a, b] = colours[kind];
    const [m, c, d] = colours[other];
    return steps(Math.hypot(l - m, a - c, b - d));
  });
  const leastPx = Float64Array.from({ length: maxCells }, (_, kind) =>
    bandOfCell(kind) === brushedBand ? 0 : sizes.shapePx,
  );
  yield* mergeSmall(kinds, size, { leastPx, difference });
}

export interface MergeSizes {
  /** Shapes under this are merged, px; whites and the darkest only under `accentPx`. */
  readonly shapePx: number;
  readonly accentPx: number;
  /** Bands planned so near to the paper that they may stay white. */
  readonly whiteBands: ReadonlySet<number>;
  readonly darkestBand: number;
}

/** What is too small to paint on this sheet: squares of the smallest short side, `smallestMm`. */
export function mergeSizes(
  tones: CellTones,
  range: ToneRange,
  bandCount: number,
  pxPerMm: number,
  smallestMm: number = smallestShapeMm.darks,
): MergeSizes {
  const whiteBands = new Set<number>();
  for (let band = 1; band <= bandCount; band++) {
    const mean = tones.meanOf((kind) => bandOfCell(kind) === band);
    if (mean && range.paper - plannedLightness(range, mean.tones) <= reserveWithin) {
      whiteBands.add(band);
    }
  }
  return {
    shapePx: (smallestMm * pxPerMm) ** 2,
    accentPx: (Math.min(smallestShapeMm.details, smallestMm) * pxPerMm) ** 2,
    whiteBands,
    darkestBand: bandCount,
  };
}

/** A group's (one band of one passage) share of a family under this part of the picture is not worth a mix of its own ... */
const scarceShare = 0.004;
/** ... unless its colour is this far from all others of the band (a*, b*): an accent. Own limits. */
const accentDistance = 25;

type Means = readonly (MeanTones | null)[];

/** The family of the same group nearest in colour that is not scarce itself, and how far it is. */
function nearestInGroup(kind: number, [, a, b]: MeanTones['lab'], plenty: Means) {
  let best = kind;
  let least = Number.POSITIVE_INFINITY;
  for (let family = 0; family < familiesPerBand; family++) {
    const other = packCell(groupOfCell(kind), family);
    const lab = plenty[other]?.lab;
    if (!lab || other === kind) continue;
    const distance = Math.hypot(lab[1] - a, lab[2] - b);
    if (distance >= least) continue;
    least = distance;
    best = other;
  }
  return { best, least };
}

/** Which kind stands in for each kind; itself where it is worth painting. */
function standIns(tones: CellTones): Uint8Array {
  const means = Array.from({ length: maxCells }, (_, kind) => tones.meanOf((k) => k === kind));
  const total = means.reduce((sum, mean) => sum + (mean?.pixels ?? 0), 0);
  // The commonest family of a group is never scarce, or a small group would vanish.
  const most = new Float64Array(maxCells);
  for (const [kind, mean] of means.entries()) {
    const group = groupOfCell(kind);
    most[group] = Math.max(most[group], mean?.pixels ?? 0);
  }
  const plenty = means.map((mean, kind) => {
    if (!mean) return null;
    const enough = Math.min(scarceShare * total, most[groupOfCell(kind)]);
    return mean.pixels >= enough ? mean : null;
  });
  return Uint8Array.from({ length: maxCells }, (_, kind) => {
    if (plenty[kind]) return kind;
    const own = means[kind];
    const colour = own ?? tones.meanOf((k) => familyOfCell(k) === familyOfCell(kind));
    if (!colour) return kind;
    const { best, least } = nearestInGroup(kind, colour.lab, plenty);
    return own && least > accentDistance ? kind : best;
  });
}

/**
 * Every pixel's kind anew from its group after merging and its family before. Where a group has too
 * little of a family, or took over pixels of one it had none of, its nearest family in colour takes
 * them.
 */
function joinScarceCells(kinds: Uint8Array, groups: Uint8Array, tones: CellTones): void {
  const instead = standIns(tones);
  for (let i = 0; i < kinds.length; i++) {
    const family = familyOfCell(kinds[i]);
    kinds[i] = instead[packCell(groups[i], family)];
  }
}
