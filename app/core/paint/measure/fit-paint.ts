import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { luminanceOfLightness } from '../../colour/lightness.ts';
import { spectrumSize } from '../../colour/spectrum.ts';
import { drySurface, inside, outside } from '../../colour/surface.ts';
import { bisect } from '../../numeric/solve.ts';
import { defaultPaper, defaultPaperLab } from '../colour-of-washes.ts';
import { layOver, type PaintSpectra, paintLayer } from '../layer.ts';
import { firstGuess } from './first-guess.ts';
import { expectedError, howSure, type Probe } from './fit-confidence.ts';
import { fitEquations } from './fit-equations.ts';
import { fitSpectra, spectraOfLogs } from './fit-spectra.ts';
import { fewestSteps, type PaintMeasure, type PaintPatch } from './paint-measure.ts';
import { type MeasuredPatch, modelOf, type PatchShare } from './patch-model.ts';

/** The optics table's level of a pale wash, surface floor included. */
const paleReflectance = 0.4;
/** Of a spectrum: 400 to 700 nm ... */
const firstSample = 2;
const lastSample = 32;
/** ... and 550 nm, at whose S the table counts whites. */
const greenSample = 17;

function leastReflectance({ K, S }: PaintSpectra, load: number): number {
  const sheet = layOver(paintLayer(K, S, load), defaultPaper, new Float64Array(spectrumSize));
  const least = Math.min(...sheet.subarray(firstSample, lastSample + 1));
  return outside(least, drySurface);
}

/**
 * How many units of amount are load 1 as the optics table has it (data/pigment-optics.json): lowest
 * reflectance 400..700 nm on the default paper 0.40; for a white, which never gets there, S at 550
 * nm 1.
 */
export function paleWashAmount(spectra: PaintSpectra): number {
  const isTooPale = (logLoad: number): boolean =>
    leastReflectance(spectra, Math.exp(logLoad)) > paleReflectance;
  if (isTooPale(Math.log(1e6))) {
    return 1 / Math.max(1e-9, spectra.S[greenSample]);
  }
  const [thin, thick] = bisect(isTooPale, Math.log(1e-6), Math.log(1e6), () => 0);
  return Math.exp((thin + thick) / 2);
}

/** The same paint, K and S per load as the optics table counts it. */
function perPaleWash({ K, S }: PaintSpectra): { K: number[]; S: number[]; amount: number } {
  const amount = paleWashAmount({ K, S });
  const scaled = (spectrum: ArrayLike<number>): number[] =>
    Array.from(spectrum, (value) => value * amount);
  return { K: scaled(K), S: scaled(S), amount };
}

/** Relative error of the amount in a step, which is made by adding the same water again. */
const stepDoubt = 0.15;
/** Relative error where paint is laid over a line by eye, as strong as a step. */
const overDoubt = 0.25;
/**
 * Relative error of the painter's own paint in a half and half mix, whose strength nobody measured.
 */
const halfDoubt = 0.7;
/** Relative error of the other paint in that mix, as tubes differ in strength. */
const otherDoubt = 1;
/** A black line where it was not measured, L* (own guess). */
const usualBlack: Lab = [24, 0, 0];

/** Reflectance of a black line by its lightness: flat. */
function blackGround(patches: readonly PaintPatch[]): Float64Array {
  const { lab } = patches.find(({ is }) => is.kind === 'black') ?? { lab: usualBlack };
  const body = inside(luminanceOfLightness(lab[0]), drySurface);
  return new Float64Array(spectrumSize).fill(Math.max(0.001, body));
}

/**
 * The patches as the fit takes them, the paint sought first in its list, then the others of
 * `otherIds`. `loadOf` turns an amount into a load of those, roughly. A bare black line is a
 * ground, not a patch: null keeps its place.
 */
function patchDoubts(
  patches: readonly PaintPatch[],
  otherIds: readonly string[],
  loadOf: (amount: number) => number,
): (MeasuredPatch | null)[] {
  const black = blackGround(patches);
  const amounts = patches.flatMap(({ is }) => (is.kind === 'step' ? [is.amount] : []));
  const middle = amounts.sort((one, two) => one - two)[amounts.length >> 1] ?? 1;
  return patches.map(({ lab, is }) => {
    const own = (amount: number, doubt: number): PatchShare => ({ paint: 0, amount, doubt });
    if (is.kind === 'black') return null;
    if (is.kind === 'step') {
      return { lab, shares: [own(is.amount, stepDoubt)], ground: defaultPaper };
    }
    if (is.kind === 'over-black')
      return { lab, shares: [own(is.amount, overDoubt)], ground: black };
    const other = {
      paint: 1 + otherIds.indexOf(is.with),
      amount: loadOf(middle),
      doubt: otherDoubt,
    };
    return { lab, shares: [own(middle, halfDoubt), other], ground: defaultPaper };
  });
}

/** CIEDE2000 a patch in a photo is off by itself: grain, uneven drying, the camera (own). */
const patchNoise = 1.5;
/** Loads at which the mixes of the sure sentence are thought of. */
const probeLoads = [2, 8];

interface FitPaintOptions {
  /** Paints the patches name, by id; K and S per unit load. */
  readonly known: ReadonlyMap<string, PaintSpectra>;
  /**
   * Paints it is thought mixed with, to say how sure its mixes are: a white and a colour or more.
   */
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
  const apart = Math.max(...steps.map(({ lab }) => colourDifference(lab, steps[0].lab)));
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
 * K and S of one paint from the patches on a photo, at the loads of the optics table (load 1 the
 * pale wash), and how sure it is. At least two steps. Throws a RangeError with a painter's sentence
 * for patches nothing can be learned from.
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
  const { state, fits } = fitSpectra(measured, [null, ...others], patchNoise, 1, options.isWhite);
  const fit = fits[0];
  if (!fit) throw new TypeError('The paint sought is the first of the list.');
  const logs = state.logs[0];
  const { K, S, amount } = perPaleWash(spectraOfLogs(logs));

  const expected: Lab[] = [];
  const misfits: number[] = [];
  let next = 0;
  for (const [n, patch] of placed.entries()) {
    const lab = patches[n].lab;
    if (!patch) {
      expected.push(lab);
      continue;
    }
    const [l, a, b] = modelOf(patch, state.logs, state.drifts[next++]).lab;
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

/**
 * How far the step nearest to bare paper lies from it, as a share of the furthest. Lab distance.
 */
function thinnestShare(patches: readonly PaintPatch[]): number {
  const far = patches
    .filter(({ is }) => is.kind === 'step')
    .map(({ lab }) => Math.hypot(...lab.map((v, i) => v - defaultPaperLab[i])));
  return Math.min(...far) / Math.max(...far);
}
