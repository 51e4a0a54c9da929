import type { Lab } from '../../colour/lab.ts';
import type { Step } from '../plan.ts';
import { dryBrushCovers, type PlacedRow } from '../steps/apply-steps-to-sheet.ts';
import type { Run, RunInput } from './run.ts';
import { SquareSheet } from './square-sheet.ts';

/** The sheet after every step, square by square. */
export interface RunningSheet {
  readonly runs: readonly Run[];
  /** Of every step: dry colour of every slot, the mean over its squares. */
  readonly after: readonly (readonly Lab[])[];
  /** Of every step: sRGB bytes of every row of the squares, 3 each; steps that change nothing share one. */
  readonly looks: readonly Uint8ClampedArray[];
  /** As it is after the last step. */
  readonly sheet: SquareSheet;
}

type Laying = Pick<Step, 'kind' | 'slots' | 'mixes' | 'technique'>;

/** Runs the washes of a plan over its squares, step by step. */
export function runWashes(
  steps: readonly Laying[],
  placed: readonly PlacedRow[],
  input: RunInput,
): RunningSheet {
  const sheet = new SquareSheet(input);
  const known = new Map(placed.map((row) => [row.mix.id, row]));
  const lastStep = lastSteps(steps, known, input.slots.length);
  const runs: Run[] = [];
  const after: (readonly Lab[])[] = [];
  const looks: Uint8ClampedArray[] = [];
  for (const [n, step] of steps.entries()) {
    const rows = step.kind === 'wash' ? step.mixes.flatMap((id) => known.get(id) ?? []) : [];
    const groups = rows.flatMap((row) => sheet.groupsOf(row, step.slots));
    for (const group of groups) {
      const covers = step.technique === 'dry brush' ? dryBrushCovers : 1;
      runs.push(sheet.lay(group, (slot) => lastStep[slot] === n, covers));
    }
    const before = looks[n - 1];
    if (groups.length === 0 && before) {
      after.push(after[n - 1]);
      looks.push(before);
    } else {
      const seen = sheet.look();
      after.push(seen.slots);
      looks.push(seen.table);
    }
  }
  return { runs, after, looks, sheet };
}

/** For every slot the number of the last step that paints it; -1 where none does. */
function lastSteps(
  steps: readonly Laying[],
  known: ReadonlyMap<string, PlacedRow>,
  slotCount: number,
): Int32Array {
  const last = new Int32Array(slotCount).fill(-1);
  for (const [n, step] of steps.entries()) {
    if (step.kind !== 'wash') continue;
    const painted = step.mixes.flatMap((id) => known.get(id)?.slots ?? []);
    for (const slot of painted) if (step.slots.includes(slot)) last[slot] = n;
  }
  return last;
}
