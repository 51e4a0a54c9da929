import { joiningStep, smallestShapeMm } from '../../limits.ts';
import { mergeSmall } from '../../raster/merge-small.ts';
import type { PixelSize } from '../../raster/size.ts';
import { sizeInSubject } from '../masses.ts';
import {
  bandOfCell,
  bandOfGroup,
  brushedBand,
  type CellTones,
  familiesPerBand,
  familyOfCell,
  groupCount,
  groupOfCell,
  isPaperGroup,
  type MeanTones,
  maxCells,
  packCell,
  passageOfCell,
  passageOfGroup,
  tabled,
} from './cells.ts';

const steps = (difference: number): number => Math.round(difference / joiningStep);

/** A table of the differences between all cells; infinite where one of the two has no pixels. */
function differences(
  tones: CellTones,
  differ: (cell: number, other: number) => number,
): (cell: number, other: number) => number {
  const has = Array.from({ length: maxCells }, (_, cell) => tones.meanOf((k) => k === cell));
  const table = new Float64Array(maxCells * maxCells).fill(Number.POSITIVE_INFINITY);
  for (let cell = 0; cell < maxCells; cell++) {
    for (let other = 0; other < maxCells; other++) {
      if (has[cell] && has[other]) table[cell * maxCells + other] = differ(cell, other);
    }
  }
  return (cell, other) => table[cell * maxCells + other];
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
  const isLike = (one: number, other: number): boolean =>
    bandOfGroup(one) === bandOfGroup(other) && isPaperGroup(one) === isPaperGroup(other);
  const lightness = Array.from(
    { length: groupCount },
    (_, group) => tones.meanOf((cell) => isLike(groupOfCell(cell), group))?.lab[0] ?? 0,
  );
  const leastPx = lightness.map((_, group) => {
    const band = bandOfGroup(group);
    if (band === brushedBand) return 0;
    if (band === sizes.darkestBand || isPaperGroup(group)) return sizes.accentPx;
    return passageOfGroup(group) === 1 ? sizes.subjectPx : sizes.shapePx;
  });
  const difference = (group: number, other: number): number => {
    const apart = passageOfGroup(group) !== passageOfGroup(other);
    // Her whites neither grow nor shrink.
    if (apart || bandOfGroup(group) === brushedBand || bandOfGroup(other) === brushedBand)
      return Number.POSITIVE_INFINITY;
    return steps(Math.abs(lightness[group] - lightness[other]));
  };
  yield* mergeSmall(groups, size, { leastPx, difference, timesAt: sizes.timesAt });
}

/**
 * Merges shapes too small to paint, in place, in both maps. Values come first, so that hues never
 * decide where a band ends; then families within each band. Nothing crosses from passage to passage.
 */
export function* mergeShapes(
  cells: Uint8Array,
  bands: Uint8Array,
  size: PixelSize,
  tones: CellTones,
  sizes: MergeSizes,
): Generator<void> {
  const groups = bands; // one map of that size serves for both
  for (let i = 0; i < groups.length; i++) groups[i] = groupOfCell(cells[i]);
  yield* mergeBands(groups, size, tones, sizes);
  joinScarceCells(cells, groups, tones);
  const bandByGroup = tabled(bandOfGroup);
  for (let i = 0; i < bands.length; i++) bands[i] = bandByGroup[groups[i]];
  yield;
  const colours = Array.from(
    { length: maxCells },
    (_, cell) => tones.meanOf((k) => k === cell)?.lab ?? ([0, 0, 0] as const),
  );
  const difference = differences(tones, (cell, other) => {
    if (groupOfCell(cell) !== groupOfCell(other)) return Number.POSITIVE_INFINITY;
    const [l, a, b] = colours[cell];
    const [m, c, d] = colours[other];
    return steps(Math.hypot(l - m, a - c, b - d));
  });
  const leastPx = Float64Array.from({ length: maxCells }, (_, cell) => {
    if (bandOfCell(cell) === brushedBand) return 0;
    return passageOfCell(cell) === 1 ? sizes.subjectPx : sizes.shapePx;
  });
  yield* mergeSmall(cells, size, { leastPx, difference, timesAt: sizes.timesAt });
}

export interface MergeSizes {
  /** Shapes under this are merged, px; whites and the darkest only under `accentPx`. */
  readonly shapePx: number;
  readonly accentPx: number;
  /** As `shapePx`, in the subject. */
  readonly subjectPx: number;
  /** How many times as much at a place of the picture; see `mergeSmall`. */
  readonly timesAt?: ((x: number, y: number) => number) | undefined;
  readonly darkestBand: number;
}

/** What is too small to paint on this sheet: squares of the smallest short side, `smallestMm`. */
export function mergeSizes(
  bandCount: number,
  pxPerMm: number,
  smallestMm: number = smallestShapeMm.darks,
): MergeSizes {
  return {
    shapePx: (smallestMm * pxPerMm) ** 2,
    accentPx: (Math.min(smallestShapeMm.details, smallestMm) * pxPerMm) ** 2,
    subjectPx: (sizeInSubject(smallestMm, 'darks') * pxPerMm) ** 2,
    darkestBand: bandCount,
  };
}

/** A cell with less than this share of its passage is not worth a mix of its own ... */
const scarceShare = 0.004;
/** ... unless its colour is this far from all others of the band (a*, b*): an accent (own). */
const accentDistance = 25;

type Means = readonly (MeanTones | null)[];

/** The family of the same group nearest in colour that is not scarce itself, and how far it is. */
function nearestInGroup(cell: number, [, a, b]: MeanTones['lab'], plenty: Means) {
  let best = cell;
  let least = Number.POSITIVE_INFINITY;
  for (let family = 0; family < familiesPerBand; family++) {
    const other = packCell(groupOfCell(cell), family);
    const lab = plenty[other]?.lab;
    if (!lab || other === cell) continue;
    const distance = Math.hypot(lab[1] - a, lab[2] - b);
    if (distance >= least) continue;
    least = distance;
    best = other;
  }
  return { best, least };
}

/** By cell, the cell whose mix it is painted with; itself where it is worth a mix. */
function standIns(tones: CellTones): Uint8Array {
  const means = Array.from({ length: maxCells }, (_, cell) => tones.meanOf((k) => k === cell));
  const totals = [0, 0];
  for (const [cell, mean] of means.entries()) totals[passageOfCell(cell)] += mean?.pixels ?? 0;
  // The commonest family of a group is never scarce, or a small group would vanish.
  const most = new Float64Array(maxCells);
  for (const [cell, mean] of means.entries()) {
    const group = groupOfCell(cell);
    most[group] = Math.max(most[group], mean?.pixels ?? 0);
  }
  const plenty = means.map((mean, cell) => {
    if (!mean) return null;
    const enough = Math.min(scarceShare * totals[passageOfCell(cell)], most[groupOfCell(cell)]);
    return mean.pixels >= enough ? mean : null;
  });
  return Uint8Array.from({ length: maxCells }, (_, cell) => {
    if (plenty[cell]) return cell;
    const own = means[cell];
    const colour = own ?? tones.meanOf((k) => familyOfCell(k) === familyOfCell(cell));
    if (!colour) return cell;
    const { best, least } = nearestInGroup(cell, colour.lab, plenty);
    return own && least > accentDistance ? cell : best;
  });
}

/**
 * Sets every pixel's cell anew from its group after merging and its family before. Where a group has too
 * little of a family, or took over pixels of one it had none of, its nearest family in colour takes
 * them.
 */
function joinScarceCells(cells: Uint8Array, groups: Uint8Array, tones: CellTones): void {
  const instead = standIns(tones);
  for (let i = 0; i < cells.length; i++) {
    const family = familyOfCell(cells[i]);
    cells[i] = instead[packCell(groups[i], family)];
  }
}
