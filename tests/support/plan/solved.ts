import type { PlanWishes } from '../../../app/core/decisions/plan-wishes.ts';
import type { Weather } from '../../../app/core/drying/weather.ts';
import { noCheckpoint } from '../../../app/core/palette/checkpoint.ts';
import { choosePalette } from '../../../app/core/plan/solve/choose-palette.ts';
import { type WashSolver, washSolver } from '../../../app/core/plan/solve/solve-palette.ts';
import { plannedSlots } from '../../../app/core/plan/targets/planned-slots.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import { warmMemory } from './warm-memory.ts';

/** Paints that reach darks and hues of all three readings; what a search finds does not matter here. */
export const chosen = [
  'py74-arylide-yellow',
  'pb29-ultramarine-blue',
  'pb27-prussian-blue',
  'pbr7-burnt-sienna',
];

/** Fewer of them: quicker, where the mixes do not matter either. */
export const few = ['py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'];

/** A solver over one reading, its numbers of washes solved once. */
export async function solverFor(reading: Reading, wishes: PlanWishes = {}): Promise<WashSolver> {
  const memory = warmMemory();
  const planned = await plannedSlots(
    reading,
    { box: chosen, chosen, ...wishes },
    noCheckpoint,
    memory.darkest,
  );
  const { paints } = await choosePalette(reading, planned, noCheckpoint, memory);
  return washSolver(reading, planned, paints, noCheckpoint, memory);
}

/** The same washes in another air. */
export const inAir =
  (solve: WashSolver, weather: Weather): WashSolver =>
  async (washes) => {
    const solved = await solve(washes);
    return { ...solved, facts: { ...solved.facts, weather } };
  };
