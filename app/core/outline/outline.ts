import type { Point } from '../colour/lab.ts';
import type { PixelSize } from '../raster/size.ts';
import { interestIn } from '../reading/details/centre-of-interest.ts';
import { type Edge, kindOnSheet } from '../reading/edges/edge.ts';
import { type MassSizes, massSizes } from '../reading/masses.ts';
import type { Reading } from '../reading/reading.ts';
import type { Slot } from '../reading/slot.ts';
import {
  chooseStrokes,
  type OutlineKind,
  type OutlineLine,
  type OutlinePiece,
  type OutlineRole,
} from './choose-strokes.ts';
import { featurePieces } from './feature-pieces.ts';
import { type OutlineGrid, outlineGrid } from './outline-grid.ts';
import { outlineShapes } from './outline-shapes.ts';

/** The drawing to carry over to the sheet, at true size. */
export interface Outline {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines: readonly OutlineLine[];
  readonly grid: OutlineGrid;
}

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

/** 1 for the pixels of the subject; null where there is none. */
function subjectMask({ slots }: Pick<Reading, 'slots'>, slotMap: Uint8Array): Uint8Array | null {
  const isSubject = slots.map(({ passage }) => (passage === 'subject' ? 1 : 0));
  return isSubject.includes(1) ? slotMap.map((slot) => isSubject[slot] ?? 0) : null;
}

/**
 * The drawing to transfer, from a reading as she has decided it and its slot map. Shapes under the
 * smallest size of the first wash are left out; whites, accents and the features of the subject are not. Empty for a reading made
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
  const nearness = interestIn(
    subjectMask(reading, slotMap),
    reading.proposedSubject?.path ?? null,
    raster,
  );
  const shapes = outlineShapes(slotMap, reading, smallest, nearness);
  const slotOf = (shape: number): Slot | undefined => slots[shapes.slots[shape]];
  const pieces = edges.flatMap((edge): OutlinePiece[] => {
    const beside = shapesBeside(edge, slotMap, shapes.labels, raster);
    if (!beside) return [];
    const [one, other] = beside.map((shape) => shapes.wholes[shape]) as [number, number];
    const [a, b] = [slotOf(one), slotOf(other)];
    if (one === other || !a || !b || (a.reserve && b.reserve)) return [];
    const role = roleBetween(a, b);
    const kind = drawnKind(edge, role);
    if (!kind) return [];
    const points = edge.path.map(([x, y]): Point => [x * sheet.widthMm, y * sheet.heightMm]);
    const near = nearness(...edge.path[edge.path.length >> 1]);
    return [{ kind, role, points, contrast: edge.contrast, near }];
  });
  const strokes = chooseStrokes([...pieces, ...featurePieces(reading)]);
  return { ...sheet, lines: strokes, grid: outlineGrid(sheet) };
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
