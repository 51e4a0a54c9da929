import { spectrumSize } from '../colour/spectrum.ts';
import { drySurface, outside, plainFloor } from '../colour/surface.ts';
import { type LeastSquares, minimiseSquares } from '../numeric/levenberg-marquardt.ts';
import { paperInside } from './colour-of-washes.ts';
import { type PaintSpectra, reflectanceOver, writeLayerSample } from './layer.ts';
import type { FormerBox, OwnBox } from './own-box.ts';
import { type Paint, type TubePaint, usualCoat } from './paint.ts';
import { paintBox, pigmentTable } from './paint-box.ts';
import { paintsOfSamePigment } from './paint-draft.ts';
import { traitsOfNames } from './paint-traits.ts';

/** Washes whose look is kept, in loads of the paint: from half the pale wash to three doublings over it. */
const loadsKept = [0.5, 1, 2, 4, 8] as const;
const tolerance = 1e-6;
const mostRounds = 100;

/** Reflectance inside the film of a layer of optical depths kx, sx over a ground, at one wavelength. */
function reflectanceOfLayer(kx: number, sx: number, ground: number, pair: Float64Array): number {
  writeLayerSample(kx, sx, pair, 0);
  return reflectanceOver(pair[0], pair[1], ground);
}

const formerPaper = paperInside(plainFloor);
const paper = paperInside(drySurface);

/**
 * The least squares of one wavelength. Unknowns: roots of K and S, so that neither falls below 0. Counted are cube
 * roots of reflectance, which go with lightness.
 */
function keptLook(k: number, s: number, sample: number): LeastSquares {
  const pair = new Float64Array(2);
  const before = loadsKept.map((load) =>
    Math.cbrt(
      outside(reflectanceOfLayer(k * load, s * load, formerPaper[sample], pair), plainFloor),
    ),
  );
  const lookOf = (rootK: number, rootS: number, load: number): number =>
    Math.cbrt(
      outside(
        reflectanceOfLayer(rootK ** 2 * load, rootS ** 2 * load, paper[sample], pair),
        drySurface,
      ),
    );
  const costAt = ([rootK, rootS]: Float64Array): number =>
    loadsKept.reduce((sum, load, n) => sum + (lookOf(rootK, rootS, load) - before[n]) ** 2, 0);
  const near = 1e-5;
  return {
    costAt,
    equationsAt: (place) => {
      const [rootK, rootS] = place;
      const matrix = new Float64Array(4);
      const right = new Float64Array(2);
      for (const [n, load] of loadsKept.entries()) {
        const gap = lookOf(rootK, rootS, load) - before[n];
        const slopes = [
          (lookOf(rootK + near, rootS, load) - lookOf(rootK - near, rootS, load)) / (2 * near),
          (lookOf(rootK, rootS + near, load) - lookOf(rootK, rootS - near, load)) / (2 * near),
        ];
        for (let i = 0; i < 2; i++) {
          right[i] = right[i] - slopes[i] * gap;
          for (let j = 0; j < 2; j++) matrix[2 * i + j] = matrix[2 * i + j] + slopes[i] * slopes[j];
        }
      }
      return { matrix, right, cost: costAt(place) };
    },
    longestStep: 1,
    tolerance,
    mostRounds,
  };
}

/**
 * K and S per load that look on white paper, under the surface of dried paint, as those of a paint fitted under a plain
 * floor did. Exactly is not possible: paint that scatters nothing darkens more at first under an inner reflection, and
 * less afterwards. The washes of `loadsKept` come out as near as can be, each wavelength for itself.
 */
export async function underDrySurface({
  K,
  S,
}: PaintSpectra): Promise<{ K: number[]; S: number[] }> {
  const renewed = { K: [] as number[], S: [] as number[] };
  for (let i = 0; i < spectrumSize; i++) {
    const start = Float64Array.of(
      Math.sqrt(Math.max(K[i], 1e-4)),
      Math.sqrt(Math.max(S[i] / 2, 1e-3)),
    );
    const { place } = await minimiseSquares(start, keptLook(K[i], S[i], i), async () => undefined);
    renewed.K.push(place[0] ** 2);
    renewed.S.push(place[1] ** 2);
  }
  return renewed;
}

/** Of a tube whose paint she measured or typed: the strength of a built-in paint of the same pigments, else 1. */
export function tubeOf(
  ci: readonly string[],
  name: string,
): Pick<TubePaint, 'strength' | 'mostLoad'> {
  const strength = paintsOfSamePigment(ci, name, paintBox)[0]?.strength ?? 1;
  return { strength, mostLoad: usualCoat * strength };
}

/** What is commonly given of it today; what she said herself stays. */
function renewedProperties({ ci, name, properties, fromMemory }: Paint): Paint['properties'] {
  const given =
    paintsOfSamePigment(ci, name, paintBox)[0]?.properties ?? traitsOfNames(ci, pigmentTable);
  const kept = Object.entries(properties).filter(
    ([trait]) => fromMemory && !fromMemory.some((each) => each === trait),
  );
  return { ...given, ...Object.fromEntries(kept) };
}

/** Her paint by today's table: of the built-in paint it is like, or looking as it was measured. */
async function renewedPaint(paint: Paint): Promise<Paint> {
  const { optics } = paint;
  const like = optics?.from === 'like' ? paintBox.find(({ id }) => id === optics.id) : undefined;
  const properties = renewedProperties(paint);
  const revision = paint.revision + 1;
  if (!like) {
    const spectra = await underDrySurface(paint);
    return { ...paint, ...spectra, ...tubeOf(paint.ci, paint.name), properties, revision };
  }
  const { K, S, strength, mostLoad } = like;
  return {
    ...paint,
    K,
    S,
    ...(strength && { strength }),
    ...(mostLoad && { mostLoad }),
    properties,
    revision,
  };
}

/**
 * A box of before as boxes are now: every paint of her own gets one more revision, the former stay. Plans hold the optics
 * they were made with.
 */
export async function renewBox({ paints, ...others }: FormerBox): Promise<OwnBox> {
  const newest = [...new Map(paints.map((paint) => [paint.id, paint])).values()];
  const renewed: Paint[] = [];
  for (const paint of newest) renewed.push(await renewedPaint(paint));
  return { ...others, schema: 2, paints: [...paints, ...renewed] };
}
