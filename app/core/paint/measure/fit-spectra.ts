import { spectrumSize } from '../../colour/spectrum.ts';
import { solveLinear } from '../../numeric/solve.ts';
import type { PaintSpectra } from '../layer.ts';
import { firstGuess } from './first-guess.ts';
import {
  type FitEquations,
  type Floating,
  fairMisfit,
  fitEquations,
  floatingOf,
  heed,
  misfitOf,
  type PaintPrior,
  usualPaint,
  whitePaint,
} from './fit-equations.ts';
import { type FitState, type MeasuredPatch, modelOf } from './patch-model.ts';

interface PaintFit {
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
  const own = Float64Array.from(logs[fit.paint]);
  for (let i = 0; i < 2 * spectrumSize; i++) own[i] = own[i] + step[i];
  logs[fit.paint] = own;
  for (const [n, { patch, share }] of fit.floating.entries()) {
    if (share === 0) drifts[patch] = Float64Array.from(drifts[patch]);
    const drift = drifts[patch];
    drift[share] = drift[share] + step[2 * spectrumSize + n];
  }
  return { logs, drifts };
}

/** As `fitEquations` counts it, without its equations. */
function costOf(
  state: FitState,
  { patches, paint, floating, prior, noise, fair }: PaintFit,
): number {
  const empty = fitEquations([], state, paint, [], prior, noise, fair);
  let cost = empty.cost;
  for (const { patch: patchIndex, share } of floating) {
    const patch = patches[patchIndex];
    const drift = state.drifts[patchIndex];
    const doubt = patch.shares[share]?.doubt;
    cost += (drift[share] / doubt) ** 2;
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
    damped[i * size + i] = damped[i * size + i] * (1 + damping);
  }
  if (!solveLinear(damped, step, size)) return null;
  const longest = step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const share = Math.min(1, longestStep / longest);
  return step.map((value) => value * share);
}

/**
 * Better K and S of one paint, the other paints as they are: Levenberg (1944), Quart. Appl. Math.
 * 2, 164-168; Marquardt (1963), J. SIAM 11, 431-441. Stops when a round gains under a thousandth.
 */
function fitOnePaint(state: FitState, fit: PaintFit, mostRounds: number): FitState {
  const { patches, paint, floating, prior, noise, fair } = fit;
  let best = state;
  let damping = 1e-3;
  for (let round = 0; round < mostRounds; round++) {
    const equations = fitEquations(patches, best, paint, floating, prior, noise, fair);
    let gain = 0;
    for (let attempt = 0; attempt < 8 && gain <= 0; attempt++) {
      const step = dampedStep(equations, damping);
      const next = step && stepped(best, fit, step);
      gain = next ? equations.cost - costOf(next, fit) : 0;
      if (next && gain > 0) {
        best = next;
        damping = Math.max(1e-6, damping / 5);
      } else damping *= 6;
    }
    if (gain < 1e-3 * equations.cost) break;
  }
  return best;
}

const smallest = 1e-9;

const logsOf = ({ K, S }: PaintSpectra): Float64Array =>
  Float64Array.from({ length: 2 * spectrumSize }, (_, i) =>
    Math.log(Math.max(smallest, (i < spectrumSize ? K[i] : S[i - spectrumSize]) as number)),
  );

export const spectraOfLogs = (logs: Float64Array): PaintSpectra => ({
  K: Float64Array.from(logs.subarray(0, spectrumSize), Math.exp),
  S: Float64Array.from(logs.subarray(spectrumSize), Math.exp),
});

/** How much more or less than usual it may scatter at the start: steps of ln S tried. */
const scatterings = [-2, -1, 0, 1, 2, 3, 4];

/**
 * The state with the level of S that fits best so far: from far off the slope of the cost leads
 * nowhere.
 */
function scatteringStart(state: FitState, fit: PaintFit): FitState {
  const tried = scatterings.map((step) => {
    const logs = [...state.logs];
    logs[fit.paint] = logs[fit.paint].map((log, i) => (i < spectrumSize ? log : log + step));
    const next = { ...state, logs };
    return { next, cost: costOf(next, fit) };
  });
  return tried.reduce((least, each) => (each.cost < least.cost ? each : least)).next;
}

interface PaintsFit {
  readonly state: FitState;
  /** For each paint that was sought what its equations were made of; null for a known one. */
  readonly fits: readonly (PaintFit | null)[];
}

/**
 * K and S of paints from the colours of patches. `known[n]` is a paint whose K and S (per its unit
 * of amount) are known, or null for one to be found; each of these needs a patch of its own. Paints
 * are improved one after the other, `sweeps` times round (one suffices where only one is sought).
 * Least squares over colour, as Walowit, McCarthy, Berns (1987), Color Res. Appl. 12, 340-343, do
 * over reflectance; own priors (`usualPaint`, `whitePaint`; `white`: what is sought are whites).
 * Deterministic.
 */
export function fitSpectra(
  patches: readonly MeasuredPatch[],
  known: readonly (PaintSpectra | null)[],
  noise: number,
  sweeps: number,
  white = false,
): PaintsFit {
  const fits: (PaintFit | null)[] = [];
  const logs = known.map((spectra, paint) => {
    if (spectra) {
      fits.push(null);
      return logsOf(spectra);
    }
    const alone = patches.filter((p) => p.shares.length === 1 && p.shares[0]?.paint === paint);
    const { logK, logLoad } = firstGuess(alone);
    const prior = white ? whitePaint(logK) : usualPaint(logK, logLoad);
    const floating = floatingOf(patches, paint);
    fits.push({ patches, paint, floating, prior, noise, fair: fairMisfit });
    return Float64Array.from(prior.centre);
  });
  let state: FitState = {
    logs,
    drifts: patches.map(({ shares }) => new Float64Array(shares.length)),
  };
  const single = fits.filter(Boolean).length === 1;
  // Every patch pulls in full at first: one far off at the start is not yet known to be a bad one.
  for (const fit of fits) {
    if (fit)
      state = fitOnePaint(scatteringStart(state, fit), { ...fit, fair: 1e9 }, single ? 20 : 2);
  }
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (const fit of fits) if (fit) state = fitOnePaint(state, fit, single ? 40 : 4);
  }
  return { state, fits };
}
