import { usualPaper } from '../../../app/model/drying/paper-choice.ts';
import { roomWeather } from '../../../app/model/drying/weather.ts';
import type { Paint } from '../../../app/model/paint.ts';
import type { Reading, ToneRange } from '../../../app/model/reading.ts';
import { reservesOf } from '../../../app/model/tone-range.ts';
import { darkestOf } from '../palette/darkest-of.ts';
import type { PlanCheckpoint } from './plan-checkpoint.ts';
import type { PlanFacts } from './plan-facts.ts';
import { createPlanMemory, type PlanMemory, passagesAsked } from './plan-memory.ts';
import type { PlannedSlots } from './planned-slots.ts';
import { solvePassages } from './solve-passages.ts';
import { usedFirst } from './used-first.ts';
import { whitesTogether } from './whites-together.ts';

export interface SolvedPalette {
  /** L* of the darkest single wash of these paints. */
  readonly reached: number;
  readonly range: ToneRange;
  /** Its paints are those some mix needs, and those she asked for. */
  readonly facts: PlanFacts;
}

/** What these paints do for the reading, wash over wash, with targets for the darkest they reach. */
export async function solvePalette(
  reading: Reading,
  { wishes, forDarkest }: PlannedSlots,
  paints: readonly Paint[],
  checkpoint: PlanCheckpoint,
  memory: PlanMemory = createPlanMemory(),
): Promise<SolvedPalette> {
  const reached = darkestOf(paints);
  const { range, slots } = forDarkest(reached);
  const asking = passagesAsked(slots, paints, wishes);
  const passages =
    memory.passages.get(asking) ?? (await solvePassages({ slots, paints }, wishes, checkpoint));
  memory.passages.keep(asking, passages);
  const facts = {
    reading: whitesTogether(reading, slots),
    slots,
    reserves: reservesOf(slots),
    paints: usedFirst(paints, passages, wishes),
    passages,
    ...(wishes.passages && { passagesWish: wishes.passages }),
    weather: wishes.weather ?? roomWeather,
    paper: wishes.paper ?? usualPaper,
  };
  return { reached, range, facts };
}
