import type { Lab, Point } from '../colour/lab.ts';
import type { Consistency } from '../paint/consistency.ts';
import type { Part } from '../paint/mix.ts';
import type { WashPlan } from '../plan/plan.ts';
import type { PixelSize } from '../raster/size.ts';
import type { Reading } from '../reading/reading.ts';
import type { Advice, Mending } from './comparison.ts';

/** A piece of advice she took: what is done otherwise, on this sheet only. */
export interface TakenAdvice {
  /** Step it was seen after, and the one before which it is done (null: at the end); keys of the plan. */
  readonly after: string;
  readonly before: string | null;
  readonly mending: Mending;
  readonly slot: number;
  readonly at: Point;
  readonly measured: Lab;
  readonly expected: Lab;
  readonly predicted: Lab;
  readonly parts: readonly Part[];
  /** ml of tube paint on a square metre; 0 where nothing is laid. */
  readonly load: number;
  readonly consistency: Consistency | null;
  /** Rows of the reading's squares that it covers; none: all of the slot. */
  readonly rows: readonly number[];
}

/** The wash that waits is laid otherwise; nothing is done before it. */
export const isOfNextWash = (mending: Mending): boolean =>
  mending === 'stronger-next' || mending === 'weaker-next';

interface SeenShapes {
  readonly size: PixelSize;
  readonly slotMap: Uint8Array;
  readonly shapes: Int32Array;
}

/** Rows of the squares most of whose pixels lie in the shapes of an advice; `seen` is of any size. */
export function rowsUnder(
  { slot, shapes }: Pick<Advice, 'slot' | 'shapes'>,
  { size, slotMap, shapes: labels }: SeenShapes,
  { raster, squares }: Pick<Reading, 'raster' | 'squares'>,
): number[] {
  if (!squares) return [];
  const own = new Set(shapes);
  const all = new Float64Array(squares.across * squares.down);
  const inside = new Float64Array(all.length);
  const side = (squares.sidePx * size.width) / raster.width;
  for (let i = 0; i < slotMap.length; i++) {
    if (slotMap[i] !== slot) continue;
    const column = Math.min(squares.across - 1, Math.floor((i % size.width) / side));
    const line = Math.min(squares.down - 1, Math.floor(Math.floor(i / size.width) / side));
    all[line * squares.across + column]++;
    if (own.has(labels[i])) inside[line * squares.across + column]++;
  }
  return squares.slots.flatMap((each, row) => {
    const square = squares.squares[row];
    return each === slot && inside[square] > all[square] / 2 ? [row] : [];
  });
}

/** An advice as it is kept, taken while `before` is the step that comes next. */
export const takenAdvice = (
  advice: Advice,
  after: string,
  before: string | null,
  rows: readonly number[],
  { steps }: Pick<WashPlan, 'steps'>,
): TakenAdvice => {
  const { mending, slot, at, measured, expected, predicted } = advice;
  const waits = steps.find(({ n }) => n === advice.step)?.key ?? before;
  return {
    ...{ after, mending, slot, at, measured, expected, predicted, rows },
    before: isOfNextWash(mending) ? waits : before,
    parts: advice.parts ?? [],
    load: advice.load ?? 0,
    consistency: advice.consistency ?? null,
  };
};
