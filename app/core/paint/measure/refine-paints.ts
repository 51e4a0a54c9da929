import type { Lab } from '../../colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../colour/spectrum.ts';
import { drySurface } from '../../colour/surface.ts';
import type { Pause } from '../../numeric/levenberg-marquardt.ts';
import { neverMixed, noneMeasured, notOfTheBox } from '../../words/faults.ts';
import { defaultPaper } from '../colour-of-washes.ts';
import { usualLoad } from '../consistency.ts';
import { layOver, type PaintSpectra, paintLayer } from '../layer.ts';
import { coatOf, type Paint, strengthOf } from '../paint.ts';
import { fitJointly, type JointPaint } from './fit-jointly.ts';
import type { JointPatch, PatchOptics } from './joint-patch.ts';
import { paleWashAmount } from './namesake.ts';

/** A square of the page: one paint alone, or two in equal parts of tube paint, thick as milk. */
export interface PageSquare {
  readonly lab: Lab;
  /** Ids: one, or two. */
  readonly paints: readonly string[];
  /** False where its frame does not lie on one colour: it is heeded less. */
  readonly even: boolean;
}

/** At most so many paints on a page: 21 squares. */
export const mostOnPage = 6;

/**
 * Which paints stand in the squares of a page, row by row as it is painted: each paint alone, then with every later
 * one. Of n paints n (n + 1) / 2 squares.
 */
export const squaresOfPage = (ids: readonly string[]): string[][] =>
  ids.flatMap((one, n) => [[one], ...ids.slice(n + 1).map((two) => [one, two])]);

/** How a paint differs from what it was taken for; clear: more transparent. */
export type PaintChange =
  | ('redder' | 'greener' | 'yellower' | 'bluer')
  | ('stronger' | 'weaker' | 'hiding' | 'clear');

/** A paint of hers as the page has it, and what changed. */
export interface RefinedPaint {
  readonly id: string;
  readonly K: readonly number[];
  readonly S: readonly number[];
  readonly strength: number;
  readonly mostLoad: number;
  readonly told: { readonly name: string; readonly changes: readonly PaintChange[] };
}

/** How far K and S of a paint of hers may be off before the page: it was measured, or only named (ln, own). */
const measuredDoubt = 0.35;
const namedDoubt = 0.7;
/** How far the paint in a square may be from milk, and from the other's share (ln, own). */
const squareDoubt = 0.3;
const noise = 1.5;
const unevenNoise = 4;
const optics: PatchOptics = { surface: drySurface, noise, sampleNoise: 1 };

const middleLoad = 4;
const middleWash = ({ K, S }: PaintSpectra): Lab =>
  labOfReflectance(
    layOver(paintLayer(K, S, middleLoad), defaultPaper, new Float64Array(spectrumSize)),
  );

const meanOf = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;

/** A change of colour or of a factor smaller than this is not worth a word (own). */
const seenChange = 2;
const seenFactor = 1.15;

/** What changed in a paint. */
export function changesOf(
  before: Paint,
  after: PaintSpectra,
  strengthTimes: number,
): PaintChange[] {
  const [[, a, b], [, a2, b2]] = [middleWash(before), middleWash(after)];
  const hides = meanOf(after.S) / meanOf(before.S);
  const found: (PaintChange | null)[] = [
    a2 - a > seenChange ? 'redder' : a - a2 > seenChange ? 'greener' : null,
    b2 - b > seenChange ? 'yellower' : b - b2 > seenChange ? 'bluer' : null,
    strengthTimes > seenFactor ? 'stronger' : strengthTimes < 1 / seenFactor ? 'weaker' : null,
    hides > 1.5 ? 'hiding' : hides < 1 / 1.5 ? 'clear' : null,
  ];
  return found.filter((change) => change !== null);
}

/**
 * Her measured paints put right by a page of one-to-one mixes: all fitted together to all squares, each near what it
 * was, `known` ones as they are. Amounts are tube paint by volume, so a paint that comes out darker in every mix is a
 * stronger one. Throws a RangeError with a painter's sentence for a page nothing can be learned from.
 */
export async function refinePaints(
  squares: readonly PageSquare[],
  own: readonly Paint[],
  known: readonly Paint[],
  checkpoint: Pause,
): Promise<RefinedPaint[]> {
  const paints = [...own, ...known];
  const placeOf = (id: string): number => paints.findIndex((paint) => paint.id === id);
  if (squares.some((square) => square.paints.some((id) => placeOf(id) < 0))) {
    throw new RangeError(notOfTheBox);
  }
  const mixed = new Set(
    squares.filter((each) => each.paints.length > 1).flatMap((each) => each.paints),
  );
  const untold = own.filter(({ id }) => !mixed.has(id));
  if (own.length === 0 || untold.length > 0) {
    throw new RangeError(own.length === 0 ? noneMeasured : neverMixed(untold[0].name));
  }
  const milk = usualLoad('milk');
  const patches = squares.map(
    ({ lab, paints: ids, even }): JointPatch => ({
      lab,
      ground: defaultPaper,
      shares: ids.map((id) => ({
        paint: placeOf(id),
        amount: (milk / ids.length) * strengthOf(paints[placeOf(id)]),
        doubt: squareDoubt,
      })),
      ...(!even && { noise: unevenNoise }),
    }),
  );
  const jointPaints: JointPaint[] = [
    ...own.map((paint) => {
      const doubt = paint.optics?.from === 'measured' ? measuredDoubt : namedDoubt;
      return { kind: 'alike', spectra: paint, doubt } as const;
    }),
    ...known.map((spectra) => ({ kind: 'known', spectra }) as const),
  ];
  const fit = await fitJointly({ patches, paints: jointPaints, optics }, checkpoint);
  return own.map((before, n) => {
    const found = fit.paints[n];
    // Load 1 stays the pale wash: what it takes more or less of goes into the strength.
    const perLoad = paleWashAmount(found) / paleWashAmount(before);
    const K = Array.from(found.K, (k) => k * perLoad);
    const S = Array.from(found.S, (s) => s * perLoad);
    const strength = strengthOf(before) / perLoad;
    const told = { name: before.name, changes: changesOf(before, { K, S }, 1 / perLoad) };
    return { id: before.id, K, S, strength, mostLoad: strength * coatOf(before), told };
  });
}
