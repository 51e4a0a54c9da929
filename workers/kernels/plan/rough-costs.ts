import type { FamilyWork } from './family-work.ts';
import type { Ground } from './ground.ts';
import type { PuddleOption } from './puddle-option.ts';
import type { ActiveFamily } from './stroke.ts';
import { washCost } from './wash-cost.ts';

/** Every paint of the palette, as bits. */
const anyPaint = -1;

const kept = new WeakMap<Ground, Map<string, Float64Array>>();
const workIds = new WeakMap<FamilyWork, number>();
let nextWorkId = 0;

/**
 * Rough cost of every option for one family's wash, Infinity where its paints rule it out. Kept with the ground:
 * while paints are being chosen most families stand where they stood, and all stand on white paper at first.
 */
export function roughCosts(
  { work, mask, ground }: ActiveFamily,
  options: readonly PuddleOption[],
  wash: number,
): Float64Array {
  const id = workIds.get(work) ?? nextWorkId++;
  workIds.set(work, id);
  const rows = kept.get(ground) ?? new Map<string, Float64Array>();
  kept.set(ground, rows);
  const key = `${id} ${mask} ${wash}`;
  const before = rows.get(key);
  if (before) return before;
  // On white paper every set of paints will be asked for: all at once is less than each by itself.
  const whole =
    wash === 0 && mask !== anyPaint
      ? roughCosts({ work, mask: anyPaint, ground }, options, wash)
      : undefined;
  const row = new Float64Array(options.length).fill(Number.POSITIVE_INFINITY);
  for (let n = 0; n < options.length; n++) {
    const option = options[n] as PuddleOption;
    if ((option.mask & ~mask) !== 0) continue;
    row[n] = whole ? (whole[n] as number) : washCost(option, work, wash, ground).cost;
  }
  rows.set(key, row);
  return row;
}
