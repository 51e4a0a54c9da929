import { consistencyOf } from '../../../app/model/consistency.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Part } from '../../../app/model/part.ts';
import type { Mix, Strength } from '../../../app/model/wash-plan.ts';
import { labOfReflectance } from '../optics/lab-of-reflectance.ts';
import { surfaceFloor } from '../optics/surface.ts';
import type { WashGoal } from './family-work.ts';
import type { Ground } from './ground.ts';
import { labOfGround } from './ground.ts';
import type { PuddleNames } from './puddle-names.ts';
import type { PuddleOption } from './puddle-option.ts';
import type { Stroke } from './stroke.ts';

/** Whose row it is. */
export interface RowPlace {
  readonly passage: string;
  readonly wash: number;
  readonly family: number;
}

const rowId = ({ passage, wash, family }: RowPlace): string => `${passage}/${wash}/${family}`;

/** A row for a family that gets nothing in this wash. */
export const emptyRow = (place: RowPlace, ground: Ground): Mix => ({
  id: rowId(place),
  puddle: null,
  ...place,
  parts: [],
  load: 0,
  consistency: consistencyOf(0),
  target: null,
  expected: labOfGround(ground),
  expectedWet: labOfReflectance(ground.reflectance, surfaceFloor.wet),
});

/** Paints of a puddle, most first. */
export function partsOf(option: PuddleOption, paints: readonly Paint[]): Part[] {
  return option.members
    .map((member, i) => ({
      paint: (paints[member] as Paint).id,
      parts: option.parts[i] as number,
    }))
    .sort((one, two) => two.parts - one.parts);
}

export interface PaintedRow {
  readonly place: RowPlace;
  readonly stroke: Stroke;
  readonly goal: WashGoal;
  readonly full: Ground;
  readonly weak: Ground | null;
  /** Weak bands in which this family has shapes. */
  readonly weakBands: readonly number[];
}

/** The row of a painted family. */
export function paintedRow(row: PaintedRow, paints: readonly Paint[], names: PuddleNames): Mix {
  const { place, stroke, goal, full } = row;
  const parts = partsOf(stroke.option, paints);
  const weaker: Strength | undefined =
    row.weak && stroke.weakLoad !== null
      ? {
          bands: row.weakBands,
          load: stroke.weakLoad,
          consistency: consistencyOf(stroke.weakLoad),
          target: goal.weak?.targets[0]?.lab ?? null,
          expected: labOfGround(row.weak),
          expectedWet: labOfReflectance(row.weak.reflectance, surfaceFloor.wet),
        }
      : undefined;
  return {
    id: rowId(place),
    puddle: names.of(parts),
    ...place,
    parts,
    load: stroke.load,
    consistency: consistencyOf(stroke.load),
    target: goal.full.guide ? null : (goal.full.targets[0]?.lab ?? null),
    expected: labOfGround(full),
    expectedWet: labOfReflectance(full.reflectance, surfaceFloor.wet),
    ...(weaker ? { weaker } : {}),
  };
}
