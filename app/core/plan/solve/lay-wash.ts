import type { Lab } from '../../colour/lab.ts';
import { consistencyOf } from '../../paint/consistency.ts';
import type { Part } from '../../paint/mix.ts';
import type { Paint } from '../../paint/paint.ts';
import { wetLab } from '../../paint/wet-look.ts';
import type { Slot } from '../../reading/slot.ts';
import type { Mix, Strength } from '../plan.ts';
import type { SolvedWash, WashBands } from '../plan-facts.ts';
import { type DriedSheet, labOfSheet, layMix } from './dried-sheet.ts';
import type { FamilyWork, WashGoal } from './family-work.ts';
import type { FamilyWash } from './fit-family-wash.ts';
import type { PuddleOption } from './puddle-options.ts';

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

function letterOf(n: number): string {
  const letter = letters[n % letters.length];
  return n < letters.length ? letter : `${letter}${Math.floor(n / letters.length) + 1}`;
}

const keyOf = (parts: readonly Part[]): string =>
  parts.map(({ paint, parts: count }) => `${paint} ${count}`).join(' + ');

/** Names puddles in the order they are first used: the same paints in the same parts are one puddle. */
export class PuddleNames {
  readonly #known = new Map<string, string>();

  /** The puddle's name: 'A', 'B' ... */
  of(parts: readonly Part[]): string {
    const key = keyOf(parts);
    const name = this.#known.get(key) ?? letterOf(this.#known.size);
    this.#known.set(key, name);
    return name;
  }

  /** The name it has already; null where it has none. */
  known(parts: readonly Part[]): string | null {
    return this.#known.get(keyOf(parts)) ?? null;
  }
}

/** The passage, wash and family a mix belongs to. */
interface RowPlace {
  readonly passage: string;
  readonly wash: number;
  readonly family: number;
}

const rowId = ({ passage, wash, family }: RowPlace): string => `${passage}/${wash}/${family}`;

/** A row for a family that gets nothing in this wash. */
const emptyRow = (place: RowPlace, dried: DriedSheet): Mix => ({
  id: rowId(place),
  puddle: null,
  ...place,
  parts: [],
  load: 0,
  consistency: consistencyOf(0),
  target: null,
  expected: labOfSheet(dried),
  expectedWet: wetLab(dried.reflectance),
});

/** Paints of a puddle, most first. */
function partsOf(option: PuddleOption, paints: readonly Paint[]): Part[] {
  return option.members
    .map((member, i) => ({
      paint: paints[member].id,
      parts: option.parts[i],
    }))
    .sort((one, two) => two.parts - one.parts);
}

interface PaintedRow {
  readonly place: RowPlace;
  readonly familyWash: FamilyWash;
  readonly goal: WashGoal;
  readonly full: DriedSheet;
  readonly weak: DriedSheet | null;
  /** Weak bands in which this family has shapes. */
  readonly weakBands: readonly number[];
}

/** The row of a painted family. */
function paintedRow(row: PaintedRow, paints: readonly Paint[], names: PuddleNames): Mix {
  const { place, familyWash, goal, full } = row;
  const parts = partsOf(familyWash.option, paints);
  const weaker: Strength | undefined =
    row.weak && familyWash.weakLoad !== null
      ? {
          bands: row.weakBands,
          load: familyWash.weakLoad,
          consistency: consistencyOf(familyWash.weakLoad),
          target: goal.weak?.targets[0]?.lab ?? null,
          expected: labOfSheet(row.weak),
          expectedWet: wetLab(row.weak.reflectance),
        }
      : undefined;
  return {
    id: rowId(place),
    puddle: names.of(parts),
    ...place,
    parts,
    load: familyWash.load,
    consistency: consistencyOf(familyWash.load),
    target: goal.full.isIntermediate ? null : (goal.full.targets[0]?.lab ?? null),
    expected: labOfSheet(full),
    expectedWet: wetLab(full.reflectance),
    ...(weaker ? { weaker } : {}),
  };
}

/** A family on its way through the washes. */
export interface Track {
  readonly work: FamilyWork;
  readonly indices: readonly number[];
  readonly paintBits: number;
  dried: DriedSheet;
}

export interface LayInput {
  /** All slots of the plan, with targets for this palette. */
  readonly slots: readonly Slot[];
  /** At most 7. */
  readonly paints: readonly Paint[];
  readonly names: PuddleNames;
}

/** Lays one wash: makes its mixes and sets the tracks' dried sheets to those after it. */
export function layWash(
  passage: string,
  bands: WashBands,
  families: readonly number[],
  tracks: readonly Track[],
  familyWashes: ReadonlyMap<Track, FamilyWash | null>,
  { slots, paints, names }: LayInput,
  paper: DriedSheet,
): SolvedWash {
  const mixes: Mix[] = [];
  const touched: number[] = [];
  const after: Lab[] = [];
  for (const family of families) {
    const place = { passage, wash: bands.wash, family };
    const track = tracks.find(({ work }) => work.family === family);
    const familyWash = track ? familyWashes.get(track) : null;
    const goal = track?.work.washes[bands.wash - 1];
    if (!track || !familyWash || !goal) {
      mixes.push(emptyRow(place, track?.dried ?? paper));
      continue;
    }
    const full = layMix(familyWash.option, familyWash.load, track.dried);
    const weak =
      familyWash.weakLoad === null
        ? null
        : layMix(familyWash.option, familyWash.weakLoad, track.dried);
    const lightest = bands.weak[0] ?? bands.full[0] ?? 0;
    const weakBands = new Set<number>();
    for (const i of track.indices) {
      const { band } = slots[i];
      if (band < lightest) continue;
      const thin = weak && bands.weak.includes(band);
      if (thin) weakBands.add(band);
      touched.push(i);
      after.push(labOfSheet(thin ? weak : full));
    }
    const row = { place, familyWash, goal, full, weak, weakBands: [...weakBands] };
    mixes.push(paintedRow(row, paints, names));
    track.dried = full;
  }
  return { ...bands, mixes, slots: touched, after };
}
