import type { Lab } from '../../colour/lab.ts';
import type { LastAnswers } from '../../numeric/memo.ts';
import type { Step } from '../plan.ts';
import { dryBrushCovers, type PlacedRow } from '../steps/apply-steps-to-sheet.ts';
import { fingerprintOf, type Run, type RunInput } from './run.ts';
import { type Amounts, SquareSheet } from './square-sheet.ts';

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

/** What earlier plans ran out to, for whoever plans again. */
export interface RunMemory {
  /** All washes of a plan. */
  readonly laid: LastAnswers<LaidWashes>;
  /** One mix over what lies under it. */
  readonly amounts: LastAnswers<Amounts>;
}

type Look = ReturnType<SquareSheet['look']>;

/** The washes alone, one after the other: the bare paper first, then the sheet after every wash. */
interface LaidWashes {
  readonly runs: readonly Run[];
  readonly seen: readonly Look[];
  readonly sheet: SquareSheet;
}

/** Runs the washes of a plan over its squares, step by step. `memory` spares what ran before. */
export function runWashes(
  steps: readonly Laying[],
  placed: readonly PlacedRow[],
  input: RunInput,
  memory?: RunMemory,
): RunningSheet {
  const washes = steps.filter(({ kind }) => kind === 'wash');
  const asking = memory ? washesAsked(washes, placed, input) : '';
  const laid = memory?.laid.get(asking) ?? layWashes(washes, placed, input, memory?.amounts);
  memory?.laid.keep(asking, laid);
  const { runs, seen, sheet } = laid;
  let done = 0;
  const now = steps.map(({ kind }) => {
    if (kind === 'wash') done += 1;
    return seen[done];
  });
  return {
    runs,
    after: now.map(({ slots }) => slots),
    looks: now.map(({ table }) => table),
    sheet,
  };
}

/** Cache key of the laid washes: everything they depend on. */
const washesAsked = (
  washes: readonly Laying[],
  placed: readonly PlacedRow[],
  input: RunInput,
): string =>
  JSON.stringify([
    fingerprintOf(input),
    [...input.even],
    washes.map(({ slots, mixes, technique }) => [slots, mixes, technique]),
    placed.map(({ mix, slots }) => {
      const { id, wash, parts, load, expected, weaker, meets } = mix;
      return [id, wash, parts, load, expected, weaker?.bands, weaker?.load, meets, slots];
    }),
  ]);

function layWashes(
  washes: readonly Laying[],
  placed: readonly PlacedRow[],
  input: RunInput,
  known?: LastAnswers<Amounts>,
): LaidWashes {
  const sheet = new SquareSheet(input, known);
  const rowOf = new Map(placed.map((row) => [row.mix.id, row]));
  const lastWash = lastWashes(washes, rowOf, input.slots.length);
  const runs: Run[] = [];
  const seen = [sheet.look()];
  for (const [n, wash] of washes.entries()) {
    const rows = wash.mixes.flatMap((id) => rowOf.get(id) ?? []);
    const groups = rows.flatMap((row) => sheet.groupsOf(row, wash.slots));
    for (const group of groups) {
      const covers = wash.technique === 'dry brush' ? dryBrushCovers : 1;
      runs.push(sheet.lay(group, (slot) => lastWash[slot] === n, covers));
    }
    seen.push(groups.length > 0 ? sheet.look() : seen[n]);
  }
  return { runs, seen, sheet };
}

/** For every slot the number of the last wash that paints it; -1 where none does. */
function lastWashes(
  washes: readonly Laying[],
  known: ReadonlyMap<string, PlacedRow>,
  slotCount: number,
): Int32Array {
  const last = new Int32Array(slotCount).fill(-1);
  for (const [n, { mixes, slots }] of washes.entries()) {
    const painted = mixes.flatMap((id) => known.get(id)?.slots ?? []);
    for (const slot of painted) if (slots.includes(slot)) last[slot] = n;
  }
  return last;
}
