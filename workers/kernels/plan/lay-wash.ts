import type { Lab } from '../../../app/model/lab.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Slot } from '../../../app/model/slot.ts';
import type { Mix } from '../../../app/model/wash-plan.ts';
import type { FamilyWork } from './family-work.ts';
import type { Ground } from './ground.ts';
import { labOfGround, washedOver } from './ground.ts';
import { emptyRow, paintedRow } from './mix-row.ts';
import type { SolvedWash, WashBands } from './plan-facts.ts';
import type { PuddleNames } from './puddle-names.ts';
import type { Stroke } from './stroke.ts';

/** A family on its way through the washes. */
export interface Track {
  readonly work: FamilyWork;
  readonly indices: readonly number[];
  readonly mask: number;
  ground: Ground;
}

export interface LayInput {
  /** All slots of the plan, with targets for this palette. */
  readonly slots: readonly Slot[];
  /** At most 7. */
  readonly paints: readonly Paint[];
  readonly names: PuddleNames;
}

/** Lays one wash: makes its rows and moves the tracks' grounds on. */
export function layWash(
  passage: string,
  bands: WashBands,
  families: readonly number[],
  tracks: readonly Track[],
  strokes: ReadonlyMap<Track, Stroke | null>,
  { slots, paints, names }: LayInput,
  paper: Ground,
): SolvedWash {
  const mixes: Mix[] = [];
  const touched: number[] = [];
  const after: Lab[] = [];
  for (const family of families) {
    const place = { passage, wash: bands.wash, family };
    const track = tracks.find(({ work }) => work.family === family);
    const stroke = track ? strokes.get(track) : null;
    const goal = track?.work.washes[bands.wash - 1];
    if (!track || !stroke || !goal) {
      mixes.push(emptyRow(place, track?.ground ?? paper));
      continue;
    }
    const full = washedOver(stroke.option, stroke.load, track.ground);
    const weak =
      stroke.weakLoad === null ? null : washedOver(stroke.option, stroke.weakLoad, track.ground);
    const lightest = bands.weak[0] ?? bands.full[0] ?? 0;
    const weakBands = new Set<number>();
    for (const i of track.indices) {
      const { band } = slots[i] as Slot;
      if (band < lightest) continue;
      const thin = weak && bands.weak.includes(band);
      if (thin) weakBands.add(band);
      touched.push(i);
      after.push(labOfGround(thin ? weak : full));
    }
    const row = { place, stroke, goal, full, weak, weakBands: [...weakBands] };
    mixes.push(paintedRow(row, paints, names));
    track.ground = full;
  }
  return { ...bands, mixes, slots: touched, after };
}
