import type { Lab } from '../../../app/model/lab.ts';
import {
  fewestSteps,
  type PaintMeasure,
  type PaintPatch,
} from '../../../app/model/paint-measure.ts';
import { colourDifference } from '../optics/colour-difference.ts';
import { defaultPaper, defaultPaperLab } from '../optics/default-paper.ts';
import type { PaintSpectra } from '../optics/mix-spectra.ts';
import { expectedError, type Probe } from './expected-error.ts';
import { firstGuess } from './first-guess.ts';
import { fitEquations } from './fit-equations.ts';
import { fitPaints, spectraOfLogs } from './fit-paints.ts';
import { modelOf } from './fit-state.ts';
import { howSure } from './how-sure.ts';
import type { MeasuredPatch } from './measured-patch.ts';
import { perPaleWash } from './pale-wash-load.ts';
import { patchDoubts } from './patch-doubts.ts';

/** CIEDE2000 a patch in a photo is off by itself: grain, uneven drying, the camera; own choice. */
const patchNoise = 1.5;
/** Loads at which the mixes of the sure sentence are thought of. */
const probeLoads = [2, 8];

export interface FitPaintOptions {
  /** Paints the patches name, by id; K and S per unit load. */
  readonly known: ReadonlyMap<string, PaintSpectra>;
  /** Paints it is thought mixed with, to say how sure its mixes are: a white and a colour or more. */
  readonly tried: readonly PaintSpectra[];
  /** A white (Colour Index PW): it scatters far more than other paints. */
  readonly isWhite: boolean;
}

function checkPatches(patches: readonly PaintPatch[], { known }: FitPaintOptions): void {
  const steps = patches.filter(({ is }) => is.kind === 'step');
  if (steps.length < fewestSteps) {
    throw new RangeError(
      'One patch alone says too little about a paint. Measure at least two steps, better five, each twice as thin as the one before.',
    );
  }
  const apart = Math.max(
    ...steps.map(({ lab }) => colourDifference(lab, (steps[0] as PaintPatch).lab)),
  );
  if (apart < 2) {
    throw new RangeError(
      'All steps look the same, so nothing can be learned from them. Move each frame on its own patch, or paint the steps further apart: each twice as thin.',
    );
  }
  for (const { is } of patches) {
    if (is.kind === 'half' && !known.has(is.with)) {
      throw new RangeError(
        `The half and half mix names a paint that is not in the box: ${is.with}.`,
      );
    }
  }
}

/**
 * K and S of one paint from the patches on a photo, at the loads of the optics table (load 1 the pale
 * wash), and how sure it is. At least two steps. Throws a RangeError with a painter's sentence for
 * patches nothing can be learned from.
 */
export function fitPaint(patches: readonly PaintPatch[], options: FitPaintOptions): PaintMeasure {
  checkPatches(patches, options);
  const otherIds = [...options.known.keys()];
  const steps = patchDoubts(
    patches.filter(({ is }) => is.kind === 'step'),
    otherIds,
    (amount) => amount,
  ).filter((patch) => patch !== null);
  const { logLoad } = firstGuess(steps);
  const placed = patchDoubts(patches, otherIds, (amount) => amount * Math.exp(logLoad));
  const measured = placed.filter((patch) => patch !== null);
  const others = [...options.known.values()];
  const { state, fits } = fitPaints(measured, [null, ...others], patchNoise, 1, options.isWhite);
  const fit = fits[0];
  if (!fit) throw new TypeError('The paint sought is the first of the list.');
  const logs = state.logs[0] as Float64Array;
  const { K, S, amount } = perPaleWash(spectraOfLogs(logs));

  const expected: Lab[] = [];
  const misfits: number[] = [];
  let next = 0;
  for (const [n, patch] of placed.entries()) {
    const lab = (patches[n] as PaintPatch).lab;
    if (!patch) {
      expected.push(lab);
      continue;
    }
    const [l, a, b] = modelOf(patch, state.logs, state.drifts[next++] as Float64Array).lab;
    const colour: Lab = [l as number, a as number, b as number];
    expected.push(colour);
    misfits.push(colourDifference(colour, lab));
  }
  const misfit = misfits.reduce((all, one) => all + one, 0) / misfits.length;

  const equations = fitEquations(measured, state, 0, fit.floating, fit.prior, patchNoise, fit.fair);
  const errorOf = (probes: Probe[]): number =>
    Math.sqrt(
      probes.reduce((all, probe) => all + expectedError(equations, logs, probe) ** 2, 0) /
        probes.length,
    );
  const mixes = options.tried.flatMap((other) =>
    probeLoads.map((load) => ({
      amount: (load / 2) * amount,
      other,
      otherLoad: load / 2,
      ground: defaultPaper,
    })),
  );
  const loads = stepLoads(measured, state.drifts, amount);
  const verdict = howSure({
    loads,
    thinnestShare: thinnestShare(patches),
    mixError: errorOf(mixes),
    misfit,
    hidingSeen: patches.some(({ is }) => is.kind === 'over-black' || is.kind === 'half'),
    isWhite: options.isWhite,
  });
  return { K, S, ...verdict, expected, misfit };
}

/** Loads of the steps as found, ascending. */
function stepLoads(
  patches: readonly MeasuredPatch[],
  drifts: readonly Float64Array[],
  paleAmount: number,
): number[] {
  return patches
    .flatMap(({ shares, ground }, n) =>
      shares.length === 1 && ground === defaultPaper
        ? [((shares[0]?.amount ?? 0) * Math.exp(drifts[n]?.[0] ?? 0)) / paleAmount]
        : [],
    )
    .sort((one, two) => one - two);
}

/** How far the step nearest to bare paper lies from it, as a share of the furthest. Lab distance. */
function thinnestShare(patches: readonly PaintPatch[]): number {
  const far = patches
    .filter(({ is }) => is.kind === 'step')
    .map(({ lab }) => Math.hypot(...lab.map((v, i) => v - (defaultPaperLab[i] as number))));
  return Math.min(...far) / Math.max(...far);
}
