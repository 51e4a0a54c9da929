import { joiningStep, smallestShapeMm } from '../limits.ts';
import { runToEnd } from '../numeric/run-to-end.ts';
import {
  firstPixels,
  labelPixels,
  labelRuns,
  measureOutlines,
  type RunLabels,
  shapeAt,
} from '../raster/label-shapes.ts';
import { computePxPerMm, type PixelSize, shortSide } from '../raster/size.ts';
import type { MassSizes } from '../reading/masses.ts';
import type { Reading } from '../reading/reading.ts';
import type { Slot } from '../reading/slot.ts';

/** Connected shapes of a slot map; whites that touch are one shape whatever their slots. */
interface OutlineShapes {
  /** Shape of every pixel, row by row. */
  readonly labels: Int32Array;
  /** Slot of each shape; of a white, that of its first pixel. */
  readonly slots: Uint8Array;
  /** The shape that each one is part of once those too small to be drawn have joined others. */
  readonly wholes: readonly number[];
}

/** The kind that all whites share; no reading has so many slots. */
const sameWhite = 255;

/** A strip between two shapes that is narrower than this is not drawn by two lines, mm (own proposal). */
const leastStripMm = 3;

/** How near a place, 0..1 of width and height, is to the centre of interest, 0..1. */
export type Nearness = (x: number, y: number) => number;

/** From here on features are drawn, the smaller the nearer, and as near as this all of them (own). */
const features = { from: 0.6, all: 0.85 } as const;

/** The smallest shape drawn so near to the centre of interest, mm: from that of the first wash down to a dark's. */
function smallestNear(near: number, { firstWash, darks }: Pick<MassSizes, 'firstWash' | 'darks'>) {
  const along = (near - features.from) / (features.all - features.from);
  const part = Math.min(1, Math.max(0, along));
  return firstWash ** (1 - part) * Math.min(firstWash, darks) ** part;
}

/**
 * Least area of a shape that is drawn, px: whites to the smallest sparkle, accents as small as a dark
 * can be painted, all else as the first wash has it, but features near the centre of interest; narrow strips not at
 * all. A white that comes back at the end is not drawn either.
 */
function leastAreas(
  labels: RunLabels,
  shapeSlots: Uint8Array,
  { slots, whites = [], raster, sheet }: Reading,
  smallest: Pick<MassSizes, 'firstWash' | 'darks'>,
  nearOf: (shape: number) => number,
): Float64Array {
  const pxPerMm = computePxPerMm(raster, sheet);
  const px = (mm: number): number => (mm * pxPerMm) ** 2;
  const darkest = Math.max(0, ...slots.map(({ band, reserve }) => (reserve ? 0 : band)));
  const outlinesPx = measureOutlines(labels);
  const least = Float64Array.from(shapeSlots, (slot, shape) => {
    if (slots[slot]?.reserve) return px(smallestShapeMm.details);
    if (slots[slot]?.band === darkest) return px(smallest.darks);
    const narrow = shortSide(labels.areasPx[shape], outlinesPx[shape]);
    const leastMm = smallestNear(nearOf(shape), smallest);
    const stripMm = Math.min(leastStripMm, leastMm / 2);
    return narrow < stripMm * pxPerMm ? Number.POSITIVE_INFINITY : px(leastMm);
  });
  for (const { at: place, way } of whites) {
    if (way !== 'last') continue;
    const [x, y] = [Math.floor(place[0] * raster.width), Math.floor(place[1] * raster.height)];
    least[shapeAt(labels, raster, y * raster.width + x)] = Number.POSITIVE_INFINITY;
  }
  return least;
}

/** By shape: its neighbours and how many pixel sides it shares with each. */
function findSharedSides(labels: Int32Array, count: number, { width, height }: PixelSize) {
  const shared = Array.from({ length: count }, () => new Map<number, number>());
  const meet = (one: number, other: number): void => {
    if (one === other) return;
    shared[one].set(other, (shared[one].get(other) ?? 0) + 1);
    shared[other].set(one, (shared[other].get(one) ?? 0) + 1);
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const label = labels[i];
      if (x + 1 < width) meet(label, labels[i + 1]);
      if (y + 1 < height) meet(label, labels[i + width]);
    }
  }
  return shared;
}

/** A shape to be joined to others as long as it is small. */
interface JoinedShape {
  readonly slot: Slot | undefined;
  readonly leastPx: number;
  areaPx: number;
  into: number;
}

/**
 * Joins shapes smaller than their own `leastPx` to the neighbour nearest in planned value, smallest
 * first, never over the line of the subject. Not `mergeSmall` of the reading: here each shape has a
 * least size of its own, and a strip stays one to be left out whatever it has taken in.
 */
function joinSmallShapes(shapes: readonly JoinedShape[], shared: Map<number, number>[]): number[] {
  const whole = (shape: number): number => {
    let root = shape;
    while (shapes[root].into !== root) root = shapes[root].into;
    return root;
  };

  function findNearest(shape: number): number {
    const { slot, areaPx } = shapes[shape];
    const near = new Map<number, number>();
    for (const [other, sides] of shared[shape]) {
      const root = whole(other);
      if (root !== shape) near.set(root, (near.get(root) ?? 0) + sides);
    }
    shared[shape] = near;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let longest = 0;
    for (const [other, sides] of near) {
      const beside = shapes[other];
      if (!slot || !beside.slot || slot.passage !== beside.slot.passage) continue;
      // A smaller shape that is kept, a sparkle or an accent, must not grow by what surrounds it.
      if (beside.areaPx < areaPx) continue;
      const away = Math.round(Math.abs(slot.target[0] - beside.slot.target[0]) / joiningStep);
      if (away > least || (away === least && sides <= longest)) continue;
      [best, least, longest] = [other, away, sides];
    }
    return best;
  }

  const isSmall = (i: number): boolean =>
    shapes[i].into === i && shapes[i].areaPx < shapes[i].leastPx;
  let small = shapes.map((_, i) => i).filter(isSmall);
  while (small.length > 0) {
    small.sort((one, other) => shapes[one].areaPx - shapes[other].areaPx || one - other);
    let joined = 0;
    for (const shape of small) {
      if (!isSmall(shape)) continue;
      const to = findNearest(shape);
      if (to === -1) continue;
      shapes[shape].into = to;
      shapes[to].areaPx += shapes[shape].areaPx;
      const kept = shared[to];
      for (const [other, sides] of shared[shape]) kept.set(other, (kept.get(other) ?? 0) + sides);
      joined++;
    }
    if (joined === 0) break;
    small = small.filter(isSmall);
  }
  return shapes.map((_, i) => whole(i));
}

/**
 * The shapes of a slot map (an index into the reading's slots for every pixel), and which of them are
 * drawn as one because they are too small; smaller ones stand near the centre of interest.
 */
export function outlineShapes(
  slotMap: Uint8Array,
  reading: Reading,
  smallest: Pick<MassSizes, 'firstWash' | 'darks'>,
  nearness: Nearness = () => 0,
): OutlineShapes {
  const { slots, raster } = reading;
  const kinds = Uint8Array.from({ length: 256 }, (_, i) => (slots[i]?.reserve ? sameWhite : i));
  const found = runToEnd(
    labelRuns(
      slotMap.map((slot) => kinds[slot]),
      raster,
    ),
  );
  const labels = labelPixels(found);
  const first = firstPixels(found);
  const shapeSlots = Uint8Array.from(first, (pixel) => slotMap[pixel]);
  // A small shape is near where it begins.
  const nearOf = (shape: number): number => {
    const pixel = first[shape];
    return nearness((pixel % raster.width) / raster.width, pixel / raster.width / raster.height);
  };
  const least = leastAreas(found, shapeSlots, reading, smallest, nearOf);
  const shapes = Array.from(found.areasPx, (areaPx, shape): JoinedShape => {
    return { slot: slots[shapeSlots[shape]], leastPx: least[shape], areaPx, into: shape };
  });
  const wholes = joinSmallShapes(shapes, findSharedSides(labels, shapes.length, raster));
  return { labels, slots: shapeSlots, wholes };
}
