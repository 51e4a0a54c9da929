import { colourDifference } from '../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../app/core/colour/lab.ts';
import { inside } from '../../../app/core/colour/surface.ts';
import type { PaintSpectra } from '../../../app/core/paint/layer.ts';
import {
  emptyLook,
  type JointPatch,
  lookAtPatch,
  type PatchOptics,
  patchTarget,
} from '../../../app/core/paint/measure/joint-patch.ts';
import fixture from '../../fixtures/measured-watercolour-2.json';
import { seeded } from '../reading/seeded.ts';

// Chen, Huang, Chang, Ouhyoung (2019), arXiv:1904.00275: 142 washes of 13 paints, 520 mixtures of 52 pairs.

/** Surface of the set's own geometry; noise as for patches in a photo. */
export const setOptics: PatchOptics = {
  surface: { k1: fixture.surface.k1, k2: fixture.surface.k2 },
  noise: 1.5,
  sampleNoise: 1,
};

const paper = Float64Array.from(fixture.paper_R, (r) => inside(r, setOptics.surface));

/** A row of the set: paints, their amounts in 0.01 ml, colour. */
const patchOf = (row: readonly number[], count: number, doubt: number): JointPatch => ({
  lab: row.slice(2 * count) as unknown as Lab,
  ground: paper,
  shares: row.slice(0, count).map((paint, n) => ({
    paint,
    amount: row[count + n] as number,
    doubt,
  })),
});

/**
 * The tables hold smoothed values of the ladders, so their amounts may be 10 % off. To doubt those of the
 * mixtures as well gained nothing when tried on pairs kept back (2.40 against 2.37).
 */
export const ladders: readonly JointPatch[] = fixture.single.map((row) => patchOf(row, 1, 0.1));
export const mixtures: readonly JointPatch[] = fixture.mixtures.map((row) => patchOf(row, 2, 0));
export const thirteenSought = fixture.paints.map(() => ({ kind: 'sought', white: false }) as const);
/** K and S per 0.01 ml fitted to these very rows and their spectra, apart from this code (fixtures/ATTRIBUTION.md). */
export const fittedPaints: readonly PaintSpectra[] = fixture.paints;

const pairOf = ({ shares }: JointPatch): string => shares.map(({ paint }) => paint).join(' ');
const pairs = [...new Set(mixtures.map(pairOf))];

/** 0..3 for each pair: 13 whole pairs in each, dealt in the order of the set (0) or shuffled with a seed. */
function foldByPair(seed: number): ReadonlyMap<string, number> {
  const order = [...pairs];
  const random = seeded(seed);
  for (let i = order.length - 1; seed > 0 && i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j] as string, order[i] as string];
  }
  return new Map(order.map((pair, n) => [pair, n % 4]));
}

/** The mixtures of a fold's 13 pairs, and those of the 39 others. */
export function splitByPair(fold: number, seed = 0) {
  const folds = foldByPair(seed);
  const isKept = (patch: JointPatch): boolean => folds.get(pairOf(patch)) === fold;
  return {
    keptBack: mixtures.filter(isKept),
    training: mixtures.filter((patch) => !isKept(patch)),
  };
}

/** CIEDE2000 between the colour of each patch and what the paints, in the amounts stated, come to. */
export function differencesOf(
  patches: readonly JointPatch[],
  paints: readonly PaintSpectra[],
  optics: PatchOptics = setOptics,
): number[] {
  const look = emptyLook(2);
  const spectra = paints.map(({ K, S }) => Float64Array.of(...Array.from(K), ...Array.from(S)));
  return patches.map((patch) => {
    lookAtPatch(patchTarget(patch, optics), spectra, optics, look);
    return colourDifference([...look.lab] as unknown as Lab, patch.lab);
  });
}

export interface Spread {
  readonly mean: number;
  readonly median: number;
  readonly share95: number;
}

export function spreadOf(differences: readonly number[]): Spread {
  const sorted = differences.toSorted((a, b) => a - b);
  return {
    mean: sorted.reduce((all, one) => all + one, 0) / sorted.length,
    median: sorted[sorted.length >> 1] as number,
    share95: sorted[Math.floor(0.95 * sorted.length)] as number,
  };
}

export const spreadWords = ({ mean, median, share95 }: Spread): string =>
  `mean ${mean.toFixed(2)}, median ${median.toFixed(2)}, 95th percentile ${share95.toFixed(2)}`;
