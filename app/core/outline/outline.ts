import type { Point } from '../colour/lab.ts';
import type { PixelSize } from '../raster/size.ts';
import { smoothLine } from '../raster/smooth-line.ts';
import { type Edge, kindOnSheet } from '../reading/edges/edge.ts';
import { type MassSizes, massSizes } from '../reading/masses.ts';
import type { Reading } from '../reading/reading.ts';
import type { Slot } from '../reading/slot.ts';
import { type OutlineGrid, outlineGrid } from './outline-grid.ts';
import { outlineShapes } from './outline-shapes.ts';

/** hard: a full line; found: a thin full line; soft: dots. What is lost is not drawn. */
export type OutlineKind = 'hard' | 'found' | 'soft';

/** white: round paper kept white; outer: between things; inner: from one value to the next within one. */
export type OutlineRole = 'white' | 'outer' | 'inner';

export interface OutlineLine {
  readonly kind: OutlineKind;
  readonly role: OutlineRole;
  /** mm on the sheet from its left and from its top. */
  readonly points: readonly Point[];
}

/** The drawing to carry over to the sheet, at true size. */
export interface Outline {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines: readonly OutlineLine[];
  readonly grid: OutlineGrid;
}

/** Shorter lines by themselves are not worth drawing, mm; round whites they are. */
const leastLineMm = 2;

const lengthOf = (points: readonly Point[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [fromX, fromY] = points[i - 1] ?? [x, y];
    return sum + Math.hypot(x - fromX, y - fromY);
  }, 0);

/** What is drawn of an edge; null for nothing. Paper must stay white, so a white's lost edge is dotted. */
function drawnKind(edge: Edge, role: OutlineRole): OutlineKind | null {
  const kind = kindOnSheet(edge);
  if (kind !== 'lost') return kind;
  return role === 'white' && edge.wish !== 'lose' ? 'soft' : null;
}

function roleBetween(one: Slot, other: Slot): OutlineRole {
  if (one.reserve || other.reserve) return 'white';
  if (one.passage !== other.passage || one.family !== other.family) return 'outer';
  return Math.abs(one.band - other.band) > 1 ? 'outer' : 'inner';
}

/**
 * The drawing to transfer, from a reading as she has decided it and its slot map. Shapes under the
 * smallest size of the first wash are left out; whites and accents are not. Empty for a reading made
 * before edges were measured. What is inner and outer is (own).
 */
export function outlineOf(
  reading: Reading,
  slotMap: Uint8Array,
  smallest: MassSizes = massSizes,
): Outline {
  const { edges = [], raster, sheet, slots } = reading;
  if (slotMap.length !== raster.width * raster.height)
    throw new RangeError('the slot map must hold one number a pixel of the raster');
  const shapes = outlineShapes(slotMap, reading, smallest);
  const slotOf = (shape: number): Slot | undefined => slots[shapes.slots[shape]];
  const lines = edges.flatMap((edge): OutlineLine[] => {
    const beside = shapesBeside(edge, slotMap, shapes.labels, raster);
    if (!beside) return [];
    const [one, other] = beside.map((shape) => shapes.wholes[shape]) as [number, number];
    const [a, b] = [slotOf(one), slotOf(other)];
    if (one === other || !a || !b || (a.reserve && b.reserve)) return [];
    const role = roleBetween(a, b);
    const kind = drawnKind(edge, role);
    if (!kind) return [];
    const points = smoothLine(
      edge.path.map(([x, y]): Point => [x * sheet.widthMm, y * sheet.heightMm]),
    );
    if (role !== 'white' && lengthOf(points) < leastLineMm) return [];
    return [{ kind, role, points }];
  });
  return { ...sheet, lines, grid: outlineGrid(sheet) };
}

/** Looked at in this many places along an edge at most ... */
const places = 9;
/** ... and at these distances to either side, px: the line lies within a pixel of the true contour. */
const distances = [0.6, 1.2, 1.8, 2.5, 3.5];

const mostSeen = (seen: ReadonlyMap<number, number>): number | undefined =>
  [...seen].sort(([, one], [, other]) => other - one)[0]?.[0];

/** The shapes that meet along an edge, that of slot a first; null where they can't be told. */
function shapesBeside(
  { a, b, path }: Pick<Edge, 'a' | 'b' | 'path'>,
  slotMap: Uint8Array,
  labels: Int32Array,
  { width, height }: PixelSize,
): readonly [number, number] | null {
  const seenA = new Map<number, number>();
  const seenB = new Map<number, number>();
  const step = Math.max(1, Math.floor((path.length - 1) / places));
  for (let n = 1; n < path.length; n += step) {
    const [fromX, fromY] = path[n - 1] as readonly [number, number];
    const [toX, toY] = path[n] as readonly [number, number];
    const [x, y] = [((fromX + toX) / 2) * width, ((fromY + toY) / 2) * height];
    const [dx, dy] = [(toX - fromX) * width, (toY - fromY) * height];
    const long = Math.hypot(dx, dy) || 1;
    for (const side of [1, -1]) {
      for (const away of distances) {
        const column = Math.floor(x - (side * away * dy) / long);
        const row = Math.floor(y + (side * away * dx) / long);
        if (column < 0 || row < 0 || column >= width || row >= height) continue;
        const pixel = row * width + column;
        const seen = slotMap[pixel] === a ? seenA : slotMap[pixel] === b ? seenB : null;
        const label = labels[pixel];
        if (seen) seen.set(label, (seen.get(label) ?? 0) + 1);
      }
    }
  }
  const [one, other] = [mostSeen(seenA), mostSeen(seenB)];
  return one === undefined || other === undefined ? null : [one, other];
}
