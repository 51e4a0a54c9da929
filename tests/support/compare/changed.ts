import type { Lab } from '../../../app/core/colour/lab.ts';
import type { Step, WashPlan } from '../../../app/core/plan/plan.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import type { Drawing } from './drawn-sheet.ts';

/** What was painted otherwise than planned, and where it must be seen. */
export interface KnownChange {
  readonly name: 'nothing' | 'band' | 'mass' | 'white' | 'edge';
  readonly drawing: Drawing;
  /** L* added where it changed, about; 0 for an edge. */
  readonly by: number;
  /** L* that all of it has instead; left out where every place is changed by as much. */
  readonly becomes?: number;
  /** Share of the sheet that changed. */
  readonly share: number;
  /** Whether a pixel of the reading's raster has changed; for an edge nothing has. */
  readonly holds: (slot: number, x: number, y: number) => boolean;
  readonly edge?: number;
}

/** Paint that much thinner or thicker: colour goes with what the paper is darkened by. */
function thinned([l, a, b]: Lab, by: number, paper: Lab): Lab {
  const lightness = Math.min(paper[0], Math.max(15, l + by));
  const times = (paper[0] - lightness) / Math.max(3, paper[0] - l);
  const left = Math.min(1.5, times);
  return [lightness, paper[1] + left * (a - paper[1]), paper[2] + left * (b - paper[2])];
}

export const nothingChanged: KnownChange = {
  name: 'nothing',
  drawing: {},
  by: 0,
  share: 0,
  holds: () => false,
};

/** All of a band lighter or darker; null where the band is too small, or paper. */
export function bandChanged(
  plan: WashPlan,
  step: Step,
  band: number,
  by: number,
): KnownChange | null {
  const own = plan.slots.flatMap((slot, i) =>
    slot.band === band && !slot.reserve && (step.after[i]?.[0] ?? 100) < plan.paper[0] - 3
      ? [i]
      : [],
  );
  // What is already as light as paper can't be made lighter.
  const room = own.filter(
    (i) =>
      (step.after[i]?.[0] ?? 100) + by < plan.paper[0] - 1 && (step.after[i]?.[0] ?? 0) + by > 16,
  );
  const share = room.reduce((sum, i) => sum + (plan.slots[i]?.share ?? 0), 0);
  if (share < 0.02 || share > 0.6 || room.length < own.length) return null;
  const set = new Set(room);
  return {
    name: 'band',
    by,
    share,
    holds: (slot) => set.has(slot),
    drawing: { change: (lab, slot) => (set.has(slot) ? thinned(lab, by, plan.paper) : lab) },
  };
}

/** Connected pixels of a slot from a seed, by flooding. */
function flooded(map: Uint8Array, width: number, height: number, seed: number): Uint8Array {
  const out = new Uint8Array(map.length);
  const stack = [seed];
  out[seed] = 1;
  while (stack.length > 0) {
    const i = stack.pop() as number;
    const x = i % width;
    for (const j of [
      x > 0 ? i - 1 : i,
      x < width - 1 ? i + 1 : i,
      i >= width ? i - width : i,
      i < width * (height - 1) ? i + width : i,
    ]) {
      if (out[j] || map[j] !== map[seed]) continue;
      out[j] = 1;
      stack.push(j);
    }
  }
  return out;
}

/** One shape taken by chance, of a share between two; null where chance finds none. */
function anyShape(
  map: Uint8Array,
  width: number,
  height: number,
  from: number,
  to: number,
  isGood: (slot: number) => boolean,
  random: () => number,
) {
  for (let n = 0; n < 200; n++) {
    const seed = Math.floor(random() * map.length);
    if (!isGood(map[seed] as number)) continue;
    const shape = flooded(map, width, height, seed);
    const share = shape.reduce((sum, each) => sum + each, 0) / shape.length;
    if (share > from && share < to) return { shape, share, slot: map[seed] as number };
  }
  return null;
}

/** A mass forgotten: it has the colour it had before this wash, at least 6 L* lighter; null where there is none. */
export function massMissing(
  reading: Reading,
  map: Uint8Array,
  plan: WashPlan,
  step: Step,
  random: () => number,
): KnownChange | null {
  const { width, height } = reading.raster;
  const washes = plan.steps.filter((each) => each.kind === 'wash' && each.n <= step.n);
  const before = plan.steps.filter((each) => each.n < (washes.at(-1)?.n ?? 0)).at(-1)?.after ?? [];
  const lighter = (slot: number): number =>
    (before[slot]?.[0] ?? plan.paper[0]) - (step.after[slot]?.[0] ?? 0);
  const found = anyShape(map, width, height, 0.01, 0.3, (slot) => lighter(slot) > 6, random);
  if (!found) return null;
  const { shape, slot: missing, share } = found;
  const bare = before[missing] ?? plan.paper;
  return {
    name: 'mass',
    by: lighter(missing),
    becomes: bare[0],
    share,
    holds: (_slot, x, y) => shape[y * width + x] === 1,
    drawing: { change: (lab, _slot, x, y) => (shape[y * width + x] ? bare : lab) },
  };
}

/** A white painted over in a light wash; null where there is none large enough. */
export function whiteLost(
  reading: Reading,
  map: Uint8Array,
  plan: WashPlan,
  random: () => number,
): KnownChange | null {
  const { width, height } = reading.raster;
  const found = anyShape(
    map,
    width,
    height,
    0.004,
    0.12,
    (slot) => plan.slots[slot]?.reserve ?? false,
    random,
  );
  if (!found) return null;
  const by = -(8 + 14 * random());
  const over: Lab = [plan.paper[0] + by, 3 * random() - 2, 10 * random()];
  return {
    name: 'white',
    by,
    becomes: over[0],
    share: found.share,
    holds: (_slot, x, y) => found.shape[y * width + x] === 1,
    drawing: { change: (lab, _slot, x, y) => (found.shape[y * width + x] ? over : lab) },
  };
}

/** The longest soft edge with some contrast, painted hard; null where there is none. */
export function edgeHardened(reading: Reading, step: Step): KnownChange | null {
  const long = Math.max(reading.sheet.widthMm, reading.sheet.heightMm);
  let best = -1;
  const edges = reading.edges ?? [];
  for (const [n, edge] of edges.entries()) {
    const apart = Math.abs((step.after[edge.a]?.[0] ?? 0) - (step.after[edge.b]?.[0] ?? 0));
    if (edge.kind !== 'soft' || edge.graded || apart < 12 || edge.lengthMm < 40) continue;
    if (edge.widthShare * long < 4) continue;
    if (best < 0 || edge.lengthMm > (edges[best]?.lengthMm ?? 0)) best = n;
  }
  if (best < 0) return null;
  return {
    name: 'edge',
    by: 0,
    share: 0,
    edge: best,
    holds: () => false,
    drawing: { crisp: (n) => n === best },
  };
}
