import { expect, test } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { tabulatedShares } from '../../../../../app/core/limits.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  driedSheetOf,
  labOfSheet,
  layMix,
} from '../../../../../app/core/plan/solve/dried-sheet.ts';
import {
  leastLoad,
  MixEstimator,
  slotCost,
} from '../../../../../app/core/plan/solve/estimate-mix-cost.ts';
import type { Goal } from '../../../../../app/core/plan/solve/family-work.ts';
import { puddleOptions } from '../../../../../app/core/plan/solve/puddle-options.ts';
import { paintsNamed } from '../../../../support/plan/solved-facts.ts';

const greySheet = (reflectance: number) =>
  driedSheetOf(new Float64Array(spectrumSize).fill(reflectance));
const paper = greySheet(0.85);
const towards = (...labs: readonly Lab[]): Goal => ({
  targets: labs.map((lab) => ({ lab, weight: 1 / labs.length })),
  lightness: labs.reduce((sum, [lightness]) => sum + lightness / labs.length, 0),
  isIntermediate: false,
});
const estimator = new MixEstimator();
const only = async (id: string) => {
  const [option] = await puddleOptions(paintsNamed(id), noCheckpoint);
  if (!option) throw new Error(`no mix of ${id}`);
  return option;
};

// Limits and figures are (own): the docstrings of what is tested say why.
test('a colour that a mix gives at some load between the tabulated ones is found, and its load', async () => {
  for (const id of ['pb29-ultramarine-blue', 'pbr7-burnt-sienna', 'py74-arylide-yellow']) {
    const option = await only(id);
    for (const share of tabulatedShares.slice(0, 12)) {
      const load = 1.2 * share * option.coat;
      const wanted = labOfSheet(layMix(option, load, paper));
      const found = estimator.estimate(option, towards(wanted), paper);
      expect(found.unsteady).toBeGreaterThan(0);
      expect(found.cost - found.unsteady, `${id} ${load}`).toBeLessThan(0.5);
      expect(Math.abs(found.load / load - 1), `${id} ${load}`).toBeLessThan(0.05);
    }
  }
});

test('paler than the palest tabulated load is found too, between it and the bare sheet', async () => {
  const option = await only('pb29-ultramarine-blue');
  const wanted = labOfSheet(layMix(option, 0.03, paper));
  const found = estimator.estimate(option, towards(wanted), paper);
  expect(found.cost).toBeLessThan(0.5);
  expect(Math.abs(found.load / 0.03 - 1)).toBeLessThan(0.1);
});

test('two targets cost what they cost by their area; one missed costs more than none', async () => {
  const option = await only('pb29-ultramarine-blue');
  const wanted = labOfSheet(layMix(option, 1, paper));
  const other: Lab = [wanted[0], wanted[1] + 20, wanted[2]];
  const cost = (...labs: readonly Lab[]) =>
    estimator.estimate(option, towards(...labs), paper).cost;
  expect(cost(wanted, other)).toBeCloseTo((cost(wanted) + cost(other)) / 2, 9);
  expect(cost(other)).toBeGreaterThan(cost(wanted) + 5);
});

test('lighter than the sheet is out of reach: as little paint as can be, at the cost of the sheet as it is', async () => {
  const option = await only('pb29-ultramarine-blue');
  const dark = greySheet(0.2);
  const [lightness] = labOfSheet(dark);
  const found = estimator.estimate(option, towards([lightness + 10, 0, 0]), dark);
  expect(found.load).toBe(leastLoad);
  // 0.6 for each L* on top of the colour difference.
  expect(found.cost).toBeGreaterThan(0.6 * 10);
  expect(estimator.estimate(option, towards(labOfSheet(dark)), dark).cost).toBeCloseTo(0, 6);
});

test('darker than the paint goes: a full coat', async () => {
  const option = await only('py74-arylide-yellow');
  const found = estimator.estimate(option, towards([5, 0, 0]), paper);
  // 26.3 loads at 1.484 loads to the ml (the optics table).
  expect(found.load).toBeCloseTo(17.7, 1);
  expect(Number.isFinite(found.cost)).toBe(true);
});

test('value counts before colour: a miss in lightness costs six tenths of its L* on top, either way', () => {
  const target: Lab = [50, 10, 0];
  for (const got of [60, 40, 50].map((lightness): Lab => [lightness, 10, 8])) {
    const onTop = slotCost(target, ...got) - colourDifference(target, got);
    expect(onTop).toBeCloseTo(0.6 * Math.abs(got[0] - 50), 9);
  }
});
