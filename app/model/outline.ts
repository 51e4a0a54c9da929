import type { Edge } from './edge.ts';
import { joinSmallShapes } from './join-small-shapes.ts';
import { kindOnSheet } from './kind-on-sheet.ts';
import type { Point } from './lab.ts';
import { type MassSizes, massSizes } from './masses.ts';
import { type OutlineGrid, outlineGrid } from './outline-grid.ts';
import { leastAreas, outlineShapes } from './outline-shapes.ts';
import type { Reading } from './reading.ts';
import { shapesBeside } from './shapes-beside.ts';
import type { Slot } from './slot.ts';
import { smoothLine } from './smooth-line.ts';

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
 * before edges were measured. What is inner and outer is our own proposal, no source.
 */
export function outlineOf(
  reading: Reading,
  slotMap: Uint8Array,
  smallest: MassSizes = massSizes,
): Outline {
  const { edges = [], raster, sheet, slots } = reading;
  if (slotMap.length !== raster.width * raster.height)
    throw new RangeError('the slot map must hold one number a pixel of the raster');
  const shapes = outlineShapes(slotMap, slots, raster);
  const wholes = joinSmallShapes(shapes, slots, raster, leastAreas(shapes, reading, smallest));
  const slotOf = (shape: number): Slot | undefined => slots[shapes.slots[shape] as number];
  const lines = edges.flatMap((edge): OutlineLine[] => {
    const beside = shapesBeside(edge, slotMap, shapes.labels, raster);
    if (!beside) return [];
    const [one, other] = beside.map((shape) => wholes[shape] as number) as [number, number];
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
