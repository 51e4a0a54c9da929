import { colourDifference } from '../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../app/core/colour/lab.ts';
import { labOfReflectance } from '../../../app/core/colour/spectrum.ts';
import {
  layOver,
  mixSpectra,
  type PaintSpectra,
  paintLayer,
} from '../../../app/core/paint/layer.ts';
import type { MeasuredPatch } from '../../../app/core/paint/measure/patch-model.ts';
import fixture from '../../fixtures/measured-watercolour-chen2019.json';

// Chen, Huang, Chang, Ouhyoung (2019), arXiv:1904.00275: measured ladders and two-paint mixtures.

/** The paper of the measurements, surface floor taken out. */
const paper = Float64Array.from(fixture.paper_R, (r) => (r - 0.03) / 0.97);

interface Mixture {
  readonly paints: readonly [number, number];
  readonly amounts: readonly [number, number];
  readonly lab: Lab;
}

const labIn = (row: readonly number[], at: number): Lab =>
  [row[at], row[at + 1], row[at + 2]] as unknown as Lab;

export const mixtures: readonly Mixture[] = fixture.mixtures.map((row) => ({
  paints: [row[0] as number, row[1] as number],
  amounts: [row[2] as number, row[3] as number],
  lab: labIn(row, 4),
}));

export const isHalf = ({ amounts: [one, two] }: Mixture): boolean => one === two;

const doubt = 0.1;

export const ladderPatches: readonly MeasuredPatch[] = fixture.single.map((row) => ({
  lab: labIn(row, 2),
  shares: [{ paint: row[0] as number, amount: row[1] as number, doubt }],
  ground: paper,
}));

export const mixturePatch = ({ paints, amounts, lab }: Mixture): MeasuredPatch => ({
  lab,
  shares: paints.map((paint, n) => ({ paint, amount: amounts[n] as number, doubt })),
  ground: paper,
});

export interface Differences {
  readonly mean: number;
  readonly share95: number;
}

/** CIEDE2000 of the mixtures as predicted from K and S per 0.01 ml. */
export function predicted(
  paints: readonly PaintSpectra[],
  list: readonly Mixture[] = mixtures,
): Differences {
  const off = list
    .map(({ paints: [one, two], amounts, lab }) => {
      const { K, S } = mixSpectra([paints[one], paints[two]] as PaintSpectra[], amounts);
      const sheet = layOver(
        paintLayer(K, S, amounts[0] + amounts[1]),
        paper,
        new Float64Array(paper.length),
      );
      return colourDifference(labOfReflectance(sheet), lab);
    })
    .sort((a, b) => a - b);
  return {
    mean: off.reduce((all, one) => all + one, 0) / off.length,
    share95: off[Math.floor(0.95 * off.length)] as number,
  };
}

export const givenPaints: readonly PaintSpectra[] = fixture.paints;
export const paintNames: readonly string[] = fixture.paints.map(({ name }) => name);
