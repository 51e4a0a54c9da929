import { joiningStep, smallestShapeMm } from '../../limits.ts';
import { labelRuns } from '../../raster/label-shapes.ts';
import { mergeSmall } from '../../raster/merge-small.ts';
import type { PixelSize } from '../../raster/size.ts';
import {
  coveredBy,
  type MassCounts,
  type MassSizes,
  type MassWash,
  sizeInSubject,
} from '../masses.ts';
import type { Slot } from '../slot.ts';

/** The shapes of one wash in a picture that was read; smallest sizes in mm, px per mm on the sheet. */
export interface WashShapesRequest {
  readonly slotMap: Uint8Array;
  readonly slots: readonly Slot[];
  readonly size: PixelSize;
  readonly pxPerMm: number;
  readonly wash: MassWash;
  readonly sizes: MassSizes;
}

export interface WashShapes {
  /** A number for every pixel, row by row; connected areas of one number are one shape. */
  readonly map: Uint8Array;
  /** Whether a number of the map is painted in this wash. */
  readonly isPainted: readonly boolean[];
  readonly count: number;
}

/** What becomes one number in a wash's map: one colour family painted, whites, or the rest. */
interface MassKind {
  readonly passage: string;
  readonly isPainted: boolean;
  readonly isWhite: boolean;
  share: number;
  lightness: number;
}

/** The kinds of a wash, and the kind of every slot. */
function kindsOf(slots: readonly Slot[], covered: readonly boolean[]) {
  const kinds: MassKind[] = [];
  const numbers = new Map<string, number>();
  const kindOfSlot = slots.map((slot, i) => {
    const isPainted = covered[i] === true;
    const key = `${slot.passage} ${isPainted ? slot.family : slot.reserve ? 'white' : 'rest'}`;
    let number = numbers.get(key);
    if (number === undefined) {
      number = kinds.length;
      numbers.set(key, number);
      kinds.push({
        passage: slot.passage,
        isPainted,
        isWhite: slot.reserve,
        share: 0,
        lightness: 0,
      });
    }
    const kind = kinds[number];
    const share = kind.share + slot.share;
    if (share > 0) kind.lightness += (slot.share / share) * (slot.target[0] - kind.lightness);
    kind.share = share;
    return number;
  });
  return { kinds, kindOfSlot };
}

/** The shapes of one wash; shapes too small for it go to the neighbour nearest in value. */
export function* washMasses(
  slotMap: Uint8Array,
  slots: readonly Slot[],
  size: PixelSize,
  pxPerMm: number,
  wash: MassWash,
  sizes: MassSizes,
): Generator<void, WashShapes> {
  const { kinds, kindOfSlot } = kindsOf(slots, coveredBy(wash, slots));
  const table = Uint8Array.from({ length: 256 }, (_, slot) => kindOfSlot[slot] ?? 0);
  const map = new Uint8Array(slotMap.length);
  for (let i = 0; i < map.length; i++) map[i] = table[slotMap[i]];
  const isPainted = kinds.map((kind) => kind.isPainted);
  if (!isPainted.includes(true)) return { map, isPainted, count: 0 };
  const leastPx = kinds.map(({ passage, isWhite, isPainted: painted }) => {
    const own = passage === 'subject' ? sizeInSubject(sizes[wash], wash) : sizes[wash];
    // Whites are kept to the smallest sparkle, and so are the accents among the darks.
    const isFine = isWhite || (wash === 'darks' && painted);
    return ((isFine ? Math.min(smallestShapeMm.details, own) : own) * pxPerMm) ** 2;
  });
  const difference = (one: number, other: number): number => {
    const [own, near] = [kinds[one], kinds[other]];
    if (own.passage !== near.passage) return Number.POSITIVE_INFINITY;
    return Math.round(Math.abs(own.lightness - near.lightness) / joiningStep);
  };
  yield* mergeSmall(map, size, { leastPx, difference });
  const { kinds: shapes } = yield* labelRuns(map, size);
  const count = shapes.reduce((sum, kind) => sum + (isPainted[kind] ? 1 : 0), 0);
  return { map, isPainted, count };
}

/** How many shapes each wash has. `slotMap` and `slots` as in a reading; it is left unchanged. */
export function* countMasses(
  slotMap: Uint8Array,
  slots: readonly Slot[],
  size: PixelSize,
  pxPerMm: number,
  sizes: MassSizes,
): Generator<void, MassCounts> {
  const count = function* (wash: MassWash): Generator<void, number> {
    return (yield* washMasses(slotMap, slots, size, pxPerMm, wash, sizes)).count;
  };
  const firstWash = yield* count('firstWash');
  yield;
  const second = yield* count('second');
  yield;
  return { firstWash, second, darks: yield* count('darks') };
}

/** The shapes of one wash, with a pause between pieces of the work; `pause` may throw to stop. */
export async function washShapes(
  { slotMap, slots, size, pxPerMm, wash, sizes }: WashShapesRequest,
  pause: () => Promise<void>,
): Promise<WashShapes> {
  const pieces = washMasses(slotMap, slots, size, pxPerMm, wash, sizes);
  for (;;) {
    const piece = pieces.next();
    await pause();
    if (piece.done) return piece.value;
  }
}
