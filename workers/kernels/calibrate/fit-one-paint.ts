import { solveSmall } from '../edges/solve-small.ts';
import { bandCount } from '../optics/wavelengths.ts';
import { type FitEquations, type Floating, fitEquations, heed, misfitOf } from './fit-equations.ts';
import { type FitState, modelOf } from './fit-state.ts';
import type { MeasuredPatch } from './measured-patch.ts';
import type { PaintPrior } from './paint-prior.ts';

export interface PaintFit {
  readonly patches: readonly MeasuredPatch[];
  readonly paint: number;
  readonly floating: readonly Floating[];
  readonly prior: PaintPrior;
  /** CIEDE2000 a patch may be off. */
  readonly noise: number;
  /** From here on patches pull no harder, in units of the noise. */
  readonly fair: number;
}

/** No step changes a logarithm by more than this. */
const longestStep = 1.5;

function stepped(state: FitState, fit: PaintFit, step: Float64Array): FitState {
  const logs = [...state.logs];
  const drifts = [...state.drifts];
  const own = Float64Array.from(logs[fit.paint] as Float64Array);
  for (let i = 0; i < 2 * bandCount; i++) own[i] = (own[i] as number) + (step[i] as number);
  logs[fit.paint] = own;
  for (const [n, { patch, share }] of fit.floating.entries()) {
    if (share === 0) drifts[patch] = Float64Array.from(drifts[patch] as Float64Array);
    const drift = drifts[patch] as Float64Array;
    drift[share] = (drift[share] as number) + (step[2 * bandCount + n] as number);
  }
  return { logs, drifts };
}

/** As `fitEquations` counts it, without its equations. */
export function costOf(
  state: FitState,
  { patches, paint, floating, prior, noise, fair }: PaintFit,
): number {
  const empty = fitEquations([], state, paint, [], prior, noise, fair);
  let cost = empty.cost;
  for (const { patch: at, share } of floating) {
    const patch = patches[at] as MeasuredPatch;
    const drift = state.drifts[at] as Float64Array;
    const doubt = patch.shares[share]?.doubt as number;
    cost += ((drift[share] as number) / doubt) ** 2;
    if (share > 0) continue;
    const { lab } = modelOf(patch, state.logs, drift);
    cost += heed(misfitOf(patch, lab, noise), fair).cost;
  }
  return cost;
}

function dampedStep({ size, matrix, right }: FitEquations, damping: number): Float64Array | null {
  const damped = Float64Array.from(matrix);
  const step = Float64Array.from(right);
  for (let i = 0; i < size; i++) {
    damped[i * size + i] = (damped[i * size + i] as number) * (1 + damping);
  }
  if (!solveSmall(damped, step, size)) return null;
  const longest = step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const share = Math.min(1, longestStep / longest);
  return step.map((value) => value * share);
}

/**
 * Better K and S of one paint, the other paints as they are: Levenberg (1944), Quart. Appl. Math. 2,
 * 164-168; Marquardt (1963), J. SIAM 11, 431-441. Stops when a round gains under a thousandth.
 */
export function fitOnePaint(state: FitState, fit: PaintFit, mostRounds: number): FitState {
  const { patches, paint, floating, prior, noise, fair } = fit;
  let now = state;
  let damping = 1e-3;
  for (let round = 0; round < mostRounds; round++) {
    const equations = fitEquations(patches, now, paint, floating, prior, noise, fair);
    let gain = 0;
    for (let attempt = 0; attempt < 8 && gain <= 0; attempt++) {
      const step = dampedStep(equations, damping);
      const next = step && stepped(now, fit, step);
      gain = next ? equations.cost - costOf(next, fit) : 0;
      if (next && gain > 0) {
        now = next;
        damping = Math.max(1e-6, damping / 5);
      } else damping *= 6;
    }
    if (gain < 1e-3 * equations.cost) break;
  }
  return now;
}
