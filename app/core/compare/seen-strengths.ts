import { solveLinear } from '../numeric/solve.ts';
import { strengthOf } from '../paint/paint.ts';
import type { WashPlan } from '../plan/plan.ts';
import { layersOn, timesFor } from './mend.ts';

/** A slot as it was measured after a step: share of the sheet, measured less expected L*. */
export interface MeasuredSlot {
  readonly slot: number;
  readonly share: number;
  readonly difference: number;
}

/** A paint that came out so many times as strong as its plan took it for. */
export interface SeenStrength {
  readonly paint: string;
  readonly times: number;
}

// Figures of this file: own.
/** A slot strays by so much, as a logarithm of what lies there, without any paint being at fault; a tube by that. */
const handSpread = 0.1;
const tubeSpread = 0.15;
/** So many slots at most are taken to stray independently. */
const mostIndependent = 12;
/** Less than this is not told, nor what follows from less than so much of a slot. */
const toldFrom = 0.06;
const leastSeen = 1;
/** What is hardly darkened says nothing of paint; so many times too much or too little is no matter of strength. */
const leastDarkened = 6;
const mostTimes = 2;

/**
 * Which paints of a plan seem stronger or weaker than it took them for, by what was measured after step `n`: least
 * squares over the slots, each paint as its share of the strength that lies there, held to 1 by how tubes differ.
 */
export function seenStrengths(
  plan: WashPlan,
  n: number,
  measured: readonly MeasuredSlot[],
): SeenStrength[] {
  const after = plan.steps.find((step) => step.n === n)?.after ?? [];
  const rows = measured.flatMap(({ slot, share, difference }) => {
    const expected = after[slot]?.[0];
    const layers = layersOn(plan, slot, n);
    if (expected === undefined || layers.length === 0 || share <= 0) return [];
    if (plan.paper[0] - expected < leastDarkened) return [];
    const times = timesFor(plan, layers, expected + difference) / timesFor(plan, layers, expected);
    if (!(times > 1 / mostTimes && times < mostTimes)) return [];
    const shares = new Map<string, number>();
    let whole = 0;
    for (const { parts, load } of layers) {
      const all = parts.reduce((sum, part) => sum + part.parts, 0);
      for (const { paint, parts: own } of parts) {
        const optics = plan.optics.find(({ id }) => id === paint);
        const strength = ((optics ? strengthOf(optics) : 1) * own * load) / all;
        shares.set(paint, (shares.get(paint) ?? 0) + strength);
        whole += strength;
      }
    }
    return [{ share, off: Math.log(times), shares, whole }];
  });
  const paints = [...new Set(rows.flatMap(({ shares }) => [...shares.keys()]))];
  const size = paints.length;
  const area = rows.reduce((sum, { share }) => sum + share, 0);
  if (size === 0 || area === 0) return [];
  const worth = Math.min(mostIndependent, rows.length) / area;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const seen = new Float64Array(size);
  for (const { share, off, shares, whole } of rows) {
    const weight = worth * share;
    const part = paints.map((paint) => (shares.get(paint) ?? 0) / whole);
    for (let i = 0; i < size; i++) {
      right[i] += weight * part[i] * off;
      seen[i] += weight * part[i];
      for (let j = 0; j < size; j++) matrix[i * size + j] += weight * part[i] * part[j];
    }
  }
  for (let i = 0; i < size; i++) matrix[i * size + i] += (handSpread / tubeSpread) ** 2;
  if (!solveLinear(matrix, right, size)) return [];
  return paints.flatMap((paint, i) =>
    Math.abs(right[i]) >= toldFrom && seen[i] >= leastSeen
      ? [{ paint, times: Math.exp(right[i]) }]
      : [],
  );
}
