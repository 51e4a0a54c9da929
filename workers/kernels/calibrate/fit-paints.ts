import type { PaintSpectra } from '../optics/mix-spectra.ts';
import { bandCount } from '../optics/wavelengths.ts';
import { firstGuess } from './first-guess.ts';
import { fairMisfit, floatingOf } from './fit-equations.ts';
import { costOf, fitOnePaint, type PaintFit } from './fit-one-paint.ts';
import type { FitState } from './fit-state.ts';
import type { MeasuredPatch } from './measured-patch.ts';
import { usualPaint, whitePaint } from './paint-prior.ts';

const smallest = 1e-9;

const logsOf = ({ K, S }: PaintSpectra): Float64Array =>
  Float64Array.from({ length: 2 * bandCount }, (_, i) =>
    Math.log(Math.max(smallest, (i < bandCount ? K[i] : S[i - bandCount]) as number)),
  );

export const spectraOfLogs = (logs: Float64Array): PaintSpectra => ({
  K: Float64Array.from(logs.subarray(0, bandCount), Math.exp),
  S: Float64Array.from(logs.subarray(bandCount), Math.exp),
});

/** How much more or less than usual it may scatter at the start: steps of ln S tried. */
const scatterings = [-2, -1, 0, 1, 2, 3, 4];

/** The state with the level of S that fits best so far: from far off the slope of the cost leads nowhere. */
function scatteringStart(state: FitState, fit: PaintFit): FitState {
  const tried = scatterings.map((step) => {
    const logs = [...state.logs];
    logs[fit.paint] = (logs[fit.paint] as Float64Array).map((log, i) =>
      i < bandCount ? log : log + step,
    );
    const next = { ...state, logs };
    return { next, cost: costOf(next, fit) };
  });
  return tried.reduce((least, each) => (each.cost < least.cost ? each : least)).next;
}

export interface PaintsFit {
  readonly state: FitState;
  /** For each paint that was sought what its equations were made of; null for a known one. */
  readonly fits: readonly (PaintFit | null)[];
}

/**
 * K and S of paints from the colours of patches. `known[n]` is a paint whose K and S (per its unit of
 * amount) are known, or null for one to be found; each of these needs a patch of its own. Paints are
 * improved one after the other, `sweeps` times round (one suffices where only one is sought).
 * Least squares over colour, as Walowit, McCarthy, Berns (1987), Color Res. Appl. 12, 340-343, do over
 * reflectance; own priors (see paint-prior.ts; `white`: what is sought are whites). Deterministic.
 */
export function fitPaints(
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
