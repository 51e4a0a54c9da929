import type { Lab } from '../../../app/model/lab.ts';
import { surfaceFloor } from '../optics/surface.ts';
import { bandCount, type Spectrum } from '../optics/wavelengths.ts';
import type { MeasuredPatch } from './measured-patch.ts';
import { spectrumFromLab } from './smooth-spectrum.ts';

/** As `spectrumFromLab`, colours beyond what a surface can have brought nearer to grey. */
function nearestSpectrum([lightness, a, b]: Lab): Float64Array {
  for (let share = 1; share > 0; share -= 0.1) {
    try {
      return spectrumFromLab([lightness, a * share, b * share]);
    } catch (thrown) {
      if (!(thrown instanceof RangeError)) throw thrown;
    }
  }
  return new Float64Array(bandCount).fill(0.5);
}

/** How deep the least reflected band of the pale wash is: 2 KX with no scattering, 0.40 on the table's paper. */
const paleDepth = Math.log(0.86 / 0.38);

/** Reflectance at 550 nm: nothing is learned of absorption over a dark ground. */
const lightGround = 0.3;

export interface FirstGuess {
  /** ln K per unit of amount, 36 bands, as if the paint did not scatter. */
  readonly logK: Float64Array;
  /** ln of the load of one unit of amount, as far as the thinnest patch tells. */
  readonly logLoad: number;
}

/** ln K by band from one patch of one paint: Beer's law, twice through the layer. */
function depthsOf({ lab, ground }: MeasuredPatch): Float64Array {
  const floor = surfaceFloor.dry;
  const seen = nearestSpectrum(lab);
  return seen.map((r, i) => {
    const body = Math.max(0.004, (r - floor) / (1 - floor));
    return Math.max(0.002, Math.log((ground[i] as Spectrum[number]) / body) / 2);
  });
}

/**
 * Where to start with a paint: absorption from the thinnest of the patches it is alone in, and the load
 * that patch seems to have. Patches are of one paint only, one at least on a light ground.
 */
export function firstGuess(alone: readonly MeasuredPatch[]): FirstGuess {
  const amountOf = (patch: MeasuredPatch): number => patch.shares[0]?.amount ?? 1;
  const onPaper = alone.filter(({ ground }) => (ground[17] as number) > lightGround);
  const thinnest = onPaper.reduce((least, each) =>
    amountOf(each) < amountOf(least) ? each : least,
  );
  const depths = depthsOf(thinnest);
  const amount = amountOf(thinnest);
  const deepest = 2 * Math.max(...depths.subarray(2, 33)); // 400..700 nm
  return {
    logK: depths.map((depth) => Math.log(depth / amount)),
    logLoad: Math.log(deepest / paleDepth / amount),
  };
}
