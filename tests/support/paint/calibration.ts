import { colourDifference } from '../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../app/core/colour/lab.ts';
import { luminanceOfLightness } from '../../../app/core/colour/lightness.ts';
import {
  labOfReflectance,
  type Spectrum,
  spectrumSize,
} from '../../../app/core/colour/spectrum.ts';
import { drySurface, inside, outside, type Surface } from '../../../app/core/colour/surface.ts';
import optics from '../../../app/core/paint/data/pigment-optics.json';
import {
  layOver,
  mixSpectra,
  type PaintSpectra,
  paintLayer,
} from '../../../app/core/paint/layer.ts';
import { labOnPaper, toneCurve } from '../../../app/core/paint/measure/camera.ts';
import { fitPaint } from '../../../app/core/paint/measure/fit-paint.ts';
import type { PaintPatch } from '../../../app/core/paint/measure/paint-measure.ts';

import fixture from '../../fixtures/measured-watercolour-2.json';
import { seeded } from '../reading/seeded.ts';
import { normals, triedPaints } from './made-ladder.ts';
import { type CameraFaults, type Light, simulatedCamera } from './simulated-camera.ts';

/** A paint as it truly is, K and S per load, under its own surface. */
export interface TruePaint extends PaintSpectra {
  readonly surface: Surface;
  /** Loads in one unit of the amounts of the measured set; 1 for paints that are not of it. */
  readonly perUnit: number;
  readonly ci: readonly string[];
}

export const paperSeen: readonly number[] = optics.paper_R;

/** Reflectance as seen of so many loads of each paint, mixed, on paper or on a grey ground. */
export function seenOf(
  paints: readonly TruePaint[],
  loads: readonly number[],
  ground: Spectrum = paperSeen,
): Float64Array {
  const [{ surface }] = paints as [TruePaint];
  const { K, S } = mixSpectra(paints, loads);
  const sum = loads.reduce((all, load) => all + load, 0);
  const under = Float64Array.from(ground, (seen) => inside(seen, surface));
  return layOver(paintLayer(K, S, sum), under, new Float64Array(spectrumSize)).map((r) =>
    outside(r, surface),
  );
}

const asSeen: Surface = { k1: 0, k2: 0 };
export const labSeen = (seen: Spectrum): Lab => labOfReflectance(seen, asSeen);

/** Lowest reflectance 400..700 nm, as seen, is 0.40 in a pale wash of the optics table. */
function amountOfPaleWash(paint: TruePaint): number {
  let [thin, thick] = [1e-6, 1e6];
  for (let n = 0; n < 60; n++) {
    const middle = Math.sqrt(thin * thick);
    if (Math.min(...seenOf([paint], [middle]).subarray(2, 33)) > 0.4) thin = middle;
    else thick = middle;
  }
  return thin;
}

const perLoad = (paint: TruePaint, amount: number): TruePaint => ({
  surface: paint.surface,
  ci: paint.ci,
  K: Array.from(paint.K, (k) => k * amount),
  S: Array.from(paint.S, (s) => s * amount),
  perUnit: 1 / amount,
});

/** What the pigments of the set are for certain (data/pigment-optics.json); the others are substitutes. */
const namesOfSet: Readonly<Record<string, readonly string[]>> = {
  'burnt sienna': ['PBr7'],
  'raw sienna': ['PBr7'],
  ultramarine: ['PB29'],
  'prussian blue': ['PB27'],
  'ivory black': ['PBk9'],
};

/** The 12 coloured paints of the measured set; its 13th is a white. */
export const measuredPaints: readonly TruePaint[] = fixture.paints
  .slice(0, 12)
  .map(({ name, K, S }) => {
    const surface = { k1: fixture.surface.k1, k2: fixture.surface.k2 };
    const paint = { K, S, surface, perUnit: 1, ci: namesOfSet[name] ?? [] };
    return perLoad(paint, amountOfPaleWash(paint));
  });

/** What she paints: steps and steps over black, in loads, and how the photo is taken. */
export interface ChartDesign {
  readonly steps: readonly number[];
  readonly overBlack: readonly number[];
  /** Lab noise of a patch, and standard deviation of ln of its load. */
  readonly noise: number;
  readonly loadError: number;
  readonly camera: CameraFaults | null;
}

type Found = PaintSpectra & { readonly sure: number };

/** How an app gets from a photo to a paint. */
export interface MeasuringWay {
  /** The colour of a patch by its light and that of paper and of a bare black line (null: none seen). */
  labOf(light: Light, paper: Light, line: Light | null): Lab;
  fit(patches: readonly PaintPatch[], ci: readonly string[]): Promise<Found>;
  /** Colour of loads of paints it found, mixed, on paper (reflectance as seen). */
  look(paints: readonly PaintSpectra[], loads: readonly number[], paper: Spectrum): Lab;
}

/** This app's way. */
export const appWay: MeasuringWay = {
  labOf: (light, paper, line) =>
    labOnPaper(light, paper, toneCurve(line && { light: line, paper })),
  fit: (patches, ci) =>
    fitPaint(
      patches,
      { card: { id: 'mine', ci }, known: new Map(), tried: triedPaints },
      async () => {},
    ),
  look(paints, loads, paper) {
    // Of K and S alone: a load is a load, whatever the strength of the tube.
    const { K, S } = mixSpectra(
      paints.map((paint) => ({ K: paint.K, S: paint.S })),
      loads,
    );
    const sum = loads.reduce((all, load) => all + load, 0);
    const under = Float64Array.from(paper, (seen) => inside(seen, drySurface));
    return labOfReflectance(layOver(paintLayer(K, S, sum), under, new Float64Array(spectrumSize)));
  },
};

/** Lab of the patches of a chart of a paint as a way gets them from a simulated photo. */
export function madeChart(
  paint: TruePaint,
  { steps, overBlack, noise, loadError, camera }: ChartDesign,
  way: Pick<MeasuringWay, 'labOf'>,
  seed: number,
): PaintPatch[] {
  const random = seeded(seed);
  const normal = normals(random);
  const shot = camera && simulatedCamera(random, camera);
  // Inks differ: 3 L* about 24.
  const ink = new Float64Array(spectrumSize).fill(
    luminanceOfLightness(Math.max(17, 24 + (camera ? 3 * normal() : 0))),
  );
  const line = shot && overBlack.length > 0 ? shot(ink) : null;
  const measured = (seen: Spectrum): Lab => {
    const lab = shot ? way.labOf(shot(seen), shot(paperSeen), line) : labSeen(seen);
    return lab.map((value) => value + noise * normal()) as unknown as Lab;
  };
  const off = (): number => Math.exp(loadError * normal());
  const patches: PaintPatch[] = steps.map((amount) => ({
    lab: measured(seenOf([paint], [amount * off()])),
    is: { kind: 'step', amount },
    even: true,
  }));
  if (overBlack.length === 0) return patches;
  const over = overBlack.map((amount): PaintPatch => {
    const lab = measured(seenOf([paint], [amount * off()], ink));
    return { lab, is: { kind: 'over-black', amount }, even: true };
  });
  return [...patches, ...over, { lab: measured(ink), is: { kind: 'black' }, even: true }];
}

export const mean = (values: readonly number[]): number =>
  values.reduce((all, one) => all + one, 0) / values.length;

/** CIEDE2000 between loads of paints as found and as they truly are, mixed, on paper. */
export const mixError = (
  found: readonly PaintSpectra[],
  paints: readonly TruePaint[],
  loads: readonly number[],
  way: MeasuringWay,
): number => colourDifference(way.look(found, loads, paperSeen), labSeen(seenOf(paints, loads)));

/** Mean error of a found paint mixed 1 : 1 with the others as they truly are, at loads 2, 8 and 24. */
export const errorAmong = (
  found: PaintSpectra,
  paint: TruePaint,
  others: readonly TruePaint[],
  way: MeasuringWay,
): number =>
  mean(
    others.flatMap((other) =>
      [1, 4, 12].map((half) => mixError([found, other], [paint, other], [half, half], way)),
    ),
  );

export interface CalibrationErrors {
  /** Measured mixtures of the set. */
  readonly held: readonly number[];
  /** Mixes 1 : 1 of all pairs at loads 2 and 8, against the truth. */
  readonly mixes: readonly number[];
  /** Single washes at loads 1, 4, 8. */
  readonly single: readonly number[];
}

/** Every coloured paint of the set fitted from a chart of its own, and how far washes and mixes are then off. */
export async function calibrationErrors(
  design: ChartDesign,
  way: MeasuringWay,
  seed: number,
): Promise<CalibrationErrors> {
  const paints = measuredPaints;
  const found: Found[] = [];
  for (const [n, paint] of paints.entries()) {
    found.push(await way.fit(madeChart(paint, design, way, 1000 * seed + n), paint.ci));
  }
  const pick = <T>(list: readonly T[], places: readonly number[]): T[] =>
    places.map((n) => list[n] as T);
  const held = fixture.mixtures.flatMap(([one = 0, two = 0, a = 0, b = 0, ...lab]) => {
    if (one > 11 || two > 11) return [];
    const pair = pick(paints, [one, two]);
    const loads = [a, b].map((amount, n) => amount * (pair[n] as TruePaint).perUnit);
    const look = way.look(pick(found, [one, two]), loads, fixture.paper_R);
    return [colourDifference(look, lab as unknown as Lab)];
  });
  const mixes = paints.flatMap((_, one) =>
    paints
      .slice(0, one)
      .flatMap((__, two) =>
        [1, 4].map((half) =>
          mixError(pick(found, [one, two]), pick(paints, [one, two]), [half, half], way),
        ),
      ),
  );
  const single = paints.flatMap((paint, n) =>
    [1, 4, 8].map((load) => mixError(pick(found, [n]), [paint], [load], way)),
  );
  return { held, mixes, single };
}
