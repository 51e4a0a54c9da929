import type { Paint } from '../../../../app/model/paint.ts';
import type { Reading } from '../../../../app/model/reading.ts';
import type { PlanCheckpoint } from '../plan-checkpoint.ts';
import type { PlanMemory } from '../plan-memory.ts';
import type { PlannedSlots } from '../planned-slots.ts';
import { type SolvedPalette, solvePalette } from '../solve-palette.ts';

/** The same paints solved for a number of washes over each other; every number once. */
export type WashSolver = (washes: number) => Promise<SolvedPalette>;

export function washSolver(
  reading: Reading,
  planned: PlannedSlots,
  paints: readonly Paint[],
  checkpoint: PlanCheckpoint,
  memory: PlanMemory,
): WashSolver {
  const solved = new Map<number, Promise<SolvedPalette>>();
  return (washes) => {
    const known = solved.get(washes);
    if (known) return known;
    const wishes = { ...planned.wishes, washes };
    const now = solvePalette(reading, { ...planned, wishes }, paints, checkpoint, memory);
    solved.set(washes, now);
    return now;
  };
}
