import { colourDifference } from '../../colour/ciede2000.ts';
import { luminanceOfLightness } from '../../colour/lightness.ts';
import { spectrumSize } from '../../colour/spectrum.ts';
import { drySurface, inside } from '../../colour/surface.ts';
import type { Pause } from '../../numeric/levenberg-marquardt.ts';
import { alikeSteps, onePatch } from '../../words/faults.ts';
import { defaultPaper, defaultPaperLab } from '../colour-of-washes.ts';
import type { PaintSpectra } from '../layer.ts';
import type { PaintCard } from '../paint.ts';
import { blackInk, withCameraFaults } from './camera.ts';
import { expectedError, howSure } from './fit-confidence.ts';
import { fitJointly, type JointPaint } from './fit-jointly.ts';
import type { JointPatch, PatchOptics, PatchShare } from './joint-patch.ts';
import { paleWashAmount, tubeOf } from './namesake.ts';
import { fewestSteps, isWhite, type PaintMeasure, type PaintPatch } from './paint-measure.ts';

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

/** CIEDE2000 a patch in a photo is off by itself: grain, uneven drying, the camera; and where its frame slipped (own). */
const patchNoise = 1.5;
const unevenNoise = 4;
const optics: PatchOptics = { surface: drySurface, noise: patchNoise, sampleNoise: 1 };

/** Reflectance of a black line by its lightness: flat. */
function blackGround(patches: readonly PaintPatch[]): Float64Array {
  const lightness = patches.find(({ is }) => is.kind === 'black')?.lab[0] ?? blackInk;
  const body = inside(luminanceOfLightness(lightness), drySurface);
  return new Float64Array(spectrumSize).fill(Math.max(0.001, body));
}

/**
 * The patches as the fit takes them, the paint sought first in its list, then the others of
 * `otherIds`. `perLoad`: how many units of amount are a load of those, roughly. A bare black line is a
 * ground, not a patch: null keeps its place.
 */
function jointPatches(
  patches: readonly PaintPatch[],
  otherIds: readonly string[],
  perLoad: number,
): (JointPatch | null)[] {
  const black = blackGround(patches);
  const amounts = patches.flatMap(({ is }) => (is.kind === 'step' ? [is.amount] : []));
  const middle = amounts.sort((one, two) => one - two)[amounts.length >> 1] ?? 1;
  return patches.map(({ lab, is, even }) => {
    if (is.kind === 'black') return null;
    const own = (amount: number, doubt: number): PatchShare => ({ paint: 0, amount, doubt });
    const seen = { lab, ...(!even && { noise: unevenNoise }) };
    if (is.kind === 'step') {
      return { ...seen, shares: [own(is.amount, stepDoubt)], ground: defaultPaper };
    }
    if (is.kind === 'over-black') {
      return { ...seen, shares: [own(is.amount, overDoubt)], ground: black };
    }
    const paint = 1 + otherIds.indexOf(is.with);
    const other = { paint, amount: middle / perLoad, doubt: otherDoubt };
    return { ...seen, shares: [own(middle, halfDoubt), other], ground: defaultPaper };
  });
}

/** Loads at which the mixes of the sure sentence are thought of. */
const probeLoads = [2, 8, 24];
/** And those of scraps of it by itself, which will put its strength right. */
const scrapLoads = [1, 4, 16];

interface FitPaintOptions {
  /** The paint it is measured as. */
  readonly card: Pick<PaintCard, 'id' | 'ci'>;
  /** Paints the patches name, by id; K and S per unit load. */
  readonly known: ReadonlyMap<string, PaintSpectra>;
  /**
   * Paints it is thought mixed with, to say how sure its mixes are: a white and a colour or more.
   */
  readonly tried: readonly PaintSpectra[];
}

function checkPatches(patches: readonly PaintPatch[], { known }: FitPaintOptions): void {
  const steps = patches.filter(({ is }) => is.kind === 'step');
  if (steps.length < fewestSteps) {
    throw new RangeError(onePatch);
  }
  const apart = Math.max(...steps.map(({ lab }) => colourDifference(lab, steps[0].lab)));
  if (apart < 2) {
    throw new RangeError(alikeSteps);
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
export async function fitPaint(
  patches: readonly PaintPatch[],
  options: FitPaintOptions,
  checkpoint: Pause,
): Promise<PaintMeasure> {
  checkPatches(patches, options);
  const { card, known, tried } = options;
  const { ci } = card;
  const paints: JointPaint[] = [
    { kind: 'sought', white: isWhite(ci) },
    ...[...known.values(), ...tried].map((spectra) => ({ kind: 'known', spectra }) as const),
  ];
  const fitted = (list: readonly JointPatch[]) =>
    fitJointly({ patches: list, paints, optics }, checkpoint);
  const placedBy = (perLoad: number) => jointPatches(patches, [...known.keys()], perLoad);
  // How much a load is must be known before it can be said how much of another paint lies in a half and half mix.
  const alone = placedBy(1).filter((patch) => patch?.shares.length === 1);
  const ofItself = await fitted(alone as JointPatch[]);
  const hasHalves = patches.some(({ is }) => is.kind === 'half');
  const placed = placedBy(paleWashAmount(ofItself.paints[0]));
  const measured = placed.filter((patch) => patch !== null);
  const fit = hasHalves ? await fitted(measured) : ofItself;
  const [found] = fit.paints;
  const { perLoad, ...tube } = tubeOf(found, card);
  const perPaleWash = (spectrum: ArrayLike<number>): number[] =>
    Array.from(spectrum, (value) => value * perLoad);

  let next = 0;
  const expected = placed.map((patch, n) => (patch ? fit.expected[next++] : patches[n].lab));
  const misfits = patches.flatMap(({ lab }, n) =>
    placed[n] ? [colourDifference(expected[n], lab)] : [],
  );
  const misfit = misfits.reduce((all, one) => all + one, 0) / misfits.length;

  const faulty = withCameraFaults(
    measured.map(({ lab }) => lab),
    patches.some(({ is }) => is.kind === 'black'),
  );
  const scraps = scrapLoads.map((load): JointPatch => {
    const shares = [{ paint: 0, amount: load * perLoad, doubt: 0 }];
    return { lab: defaultPaperLab, shares, ground: defaultPaper };
  });
  const probes = tried.flatMap((_, n) =>
    probeLoads.map((load): JointPatch => {
      const shares = [
        { paint: 0, amount: (load / 2) * perLoad, doubt: 0 },
        { paint: 1 + known.size + n, amount: load / 2, doubt: 0 },
      ];
      return { lab: defaultPaperLab, shares, ground: defaultPaper };
    }),
  );
  const problem = { patches: measured, paints, optics };
  const loads = measured
    .flatMap(({ shares, ground }, n) =>
      shares.length === 1 && ground === defaultPaper
        ? [(shares[0].amount * Math.exp(fit.drifts[n][0])) / perLoad]
        : [],
    )
    .sort((one, two) => one - two);
  const mixError = expectedError(problem, fit, { faulty, probes, scraps });
  const verdict = howSure({
    loads,
    thinnestShare: thinnestShare(patches),
    mixError,
    misfit,
    hidingSeen: patches.some(({ is }) => is.kind === 'over-black'),
    isWhite: isWhite(ci),
    uneven: patches.some(({ even }) => !even),
  });
  const K = perPaleWash(found.K);
  const S = perPaleWash(found.S);
  return { K, S, ...verdict, mixError, expected, misfit, ...tube };
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
