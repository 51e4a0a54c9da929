import { defaultPaper } from '../optics/default-paper.ts';
import type { PaintSpectra } from '../optics/mix-spectra.ts';
import { layOver, paintLayer } from '../optics/paint-layer.ts';
import { surfaceFloor } from '../optics/surface.ts';
import { bandCount } from '../optics/wavelengths.ts';

/** The optics table's level of a pale wash, surface floor included. */
const paleReflectance = 0.4;
/** 400..700 nm. */
const firstBand = 2;
const lastBand = 32;
/** S at 550 nm, by which the table counts whites. */
const midBand = 17;

function leastReflectance({ K, S }: PaintSpectra, load: number): number {
  const sheet = layOver(paintLayer(K, S, load), defaultPaper, new Float64Array(bandCount));
  const least = Math.min(...sheet.subarray(firstBand, lastBand + 1));
  return surfaceFloor.dry + (1 - surfaceFloor.dry) * least;
}

/**
 * How many units of amount are load 1 as the optics table has it (data/pigment-optics.json): lowest
 * reflectance 400..700 nm on the default paper 0.40; for a white, which never gets there, S at 550 nm 1.
 */
export function paleWashAmount(spectra: PaintSpectra): number {
  let thin = Math.log(1e-6);
  let thick = Math.log(1e6);
  if (leastReflectance(spectra, Math.exp(thick)) > paleReflectance) {
    return 1 / Math.max(1e-9, spectra.S[midBand] as number);
  }
  for (let round = 0; round < 60; round++) {
    const mid = (thin + thick) / 2;
    if (leastReflectance(spectra, Math.exp(mid)) > paleReflectance) thin = mid;
    else thick = mid;
  }
  return Math.exp((thin + thick) / 2);
}

/** The same paint, K and S per load as the optics table counts it. */
export function perPaleWash({ K, S }: PaintSpectra): { K: number[]; S: number[]; amount: number } {
  const amount = paleWashAmount({ K, S });
  const scaled = (spectrum: ArrayLike<number>): number[] =>
    Array.from(spectrum, (value) => value * amount);
  return { K: scaled(K), S: scaled(S), amount };
}
