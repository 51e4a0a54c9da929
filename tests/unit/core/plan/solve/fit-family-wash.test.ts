import { describe, expect, test } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import {
  driedSheetOf,
  labOfSheet,
  layMix,
} from '../../../../../app/core/plan/solve/dried-sheet.ts';
import { MixEstimator } from '../../../../../app/core/plan/solve/estimate-mix-cost.ts';
import type { FamilyWork, Goal } from '../../../../../app/core/plan/solve/family-work.ts';
import { WashFitter } from '../../../../../app/core/plan/solve/fit-family-wash.ts';
import {
  type PuddleOption,
  puddleOptions,
} from '../../../../../app/core/plan/solve/puddle-options.ts';
import { paintsNamed } from '../../../../support/plan/solved-facts.ts';

const options = await puddleOptions(
  paintsNamed('pb29-ultramarine-blue', 'pbr7-burnt-sienna'),
  noCheckpoint,
);
const some = options.filter(({ parts }) => ['1', '1,1', '1,3'].includes(parts.join()));
const paper = driedSheetOf(new Float64Array(spectrumSize).fill(0.85));
const goal = (weight: number, ...labs: readonly Lab[]): Goal => ({
  targets: labs.map((lab) => ({ lab, weight })),
  lightness: labs.reduce((sum, [lightness]) => sum + lightness / labs.length, 0),
  isIntermediate: false,
});
const work = (full: Goal, weak: Goal | null = null, mostLoad = Number.POSITIVE_INFINITY) =>
  ({ family: 1, washes: [{ full, weak, mostLoad }] }) satisfies FamilyWork;

/** A goal's cost at one load, written down plainly: the visible difference and six tenths of that in lightness. */
const costAt = (option: PuddleOption, load: number, { targets }: Goal): number => {
  const got = labOfSheet(layMix(option, load, paper));
  return targets.reduce(
    (sum, { lab, weight }) =>
      sum + weight * (colourDifference(lab, got) + 0.6 * Math.abs(lab[0] - got[0])),
    0,
  );
};
/** Four tenths for every paint but one, and from thick cream on two for a doubling, on the whole area. */
const plainness = ({ members }: PuddleOption, load: number): number =>
  0.4 * (members.length - 1) + 2 * Math.max(0, Math.log2(load / 11));
const loads = Array.from({ length: 900 }, (_, n) => 0.02 * 1.009 ** n);

describe('one family’s wash', () => {
  const targets = [
    goal(0.3, [70, 2, -20]),
    goal(0.1, [45, 8, 5], [40, 10, 8]),
    goal(0.5, [25, 0, 0]),
  ];

  test.each(some.map((option) => [option.members.join('+'), option] as const))(
    'of paints %s: no load near the estimate costs less than the one it finds',
    (_, option) => {
      const fitter = new WashFitter(options);
      for (const full of targets) {
        const asked = { work: work(full), paintBits: -1, dried: paper };
        const found = fitter.fit(option, asked, 0, 'exact');
        const { load = 0, weakLoad } = found?.familyWash ?? {};
        expect(weakLoad).toBeNull();
        if (load !== option.coat) expect(load).toBe(Number(load.toPrecision(3)));
        const area = full.targets.reduce((sum, { weight }) => sum + weight, 0);
        const { unsteady } = new MixEstimator().estimate(option, full, paper);
        const extra = area * (plainness(option, load) + unsteady);
        expect(found?.cost).toBeCloseTo(costAt(option, load, full) + extra, 9);
        // Within a doubling of the estimate, up to a full coat.
        const guess = fitter.fit(option, asked, 0, 'estimate')?.familyWash.load ?? 0;
        const possible = loads.filter(
          (each) => each <= option.coat && each >= guess / 2 && each <= guess * 2,
        );
        const least = Math.min(...possible.map((each) => costAt(option, each, full)));
        expect((found?.cost ?? 0) - extra).toBeLessThan(least + 0.02 * area);
      }
    },
  );

  test('never thicker than it may be', () => {
    const fitter = new WashFitter(options);
    const [blue] = some;
    if (!blue) throw new Error('no mix');
    const dark = goal(0.2, [10, 0, 0]);
    for (const precision of ['exact', 'estimate'] as const) {
      const limited = { work: work(dark, null, 3), paintBits: -1, dried: paper };
      const found = fitter.fit(blue, limited, 0, precision);
      expect(found?.familyWash.load).toBeLessThanOrEqual(3);
      expect(found?.familyWash.load).toBeGreaterThan(2.9);
    }
  });

  test('two strengths are fitted each for itself, and cost what both cost', () => {
    const fitter = new WashFitter(options);
    const [blue] = some;
    if (!blue) throw new Error('no mix');
    const [thin, full] = [goal(0.2, [85, 0, -6]), goal(0.4, [60, 3, -30])];
    const both = { work: work(full, thin), paintBits: -1, dried: paper };
    const found = fitter.fit(blue, both, 0, 'exact');
    const alone = (own: Goal) =>
      fitter.fit(blue, { work: work(own), paintBits: -1, dried: paper }, 0, 'exact');
    expect(found?.familyWash.load).toBe(alone(full)?.familyWash.load);
    expect(found?.familyWash.weakLoad).toBe(alone(thin)?.familyWash.load);
    expect(found?.cost).toBeCloseTo((alone(full)?.cost ?? 0) + (alone(thin)?.cost ?? 0), 9);
  });
});

describe('estimated costs', () => {
  const family = { work: work(goal(0.3, [50, 5, 0]), goal(0.2, [75, 2, 0])), dried: paper };

  test('are those of the estimated fits; mixes with paints it may not use cost without end', () => {
    const fitter = new WashFitter(options);
    for (const paintBits of [-1, 0b01, 0b10, 0b11]) {
      const row = fitter.estimateCosts({ ...family, paintBits }, 0);
      for (const [n, option] of options.entries()) {
        const fits = (option.paintBits & ~paintBits) === 0;
        const found = fitter.fit(option, { ...family, paintBits }, 0, 'estimate');
        if (fits) expect(row[n]).toBeCloseTo(found?.cost ?? 0, 9);
        else expect(row[n]).toBe(Number.POSITIVE_INFINITY);
      }
    }
  });

  test('are kept by sheet, work and paints, and are the same asked again', () => {
    const fitter = new WashFitter(options);
    const row = fitter.estimateCosts({ ...family, paintBits: 0b01 }, 0);
    expect(fitter.estimateCosts({ ...family, paintBits: 0b01 }, 0)).toBe(row);
    const darker = { ...family, work: work(goal(0.3, [30, 0, 0])), paintBits: 0b01 };
    const other = fitter.estimateCosts(darker, 0);
    expect(other).not.toEqual(row);
    const grey = driedSheetOf(new Float64Array(spectrumSize).fill(0.4));
    expect(fitter.estimateCosts({ ...family, dried: grey, paintBits: 0b01 }, 0)).not.toEqual(row);
    expect(fitter.estimateCosts(darker, 0)).toBe(other);
  });

  test('of a wash it has no part in are nothing', () => {
    const fitter = new WashFitter(options);
    expect([...fitter.estimateCosts({ ...family, paintBits: -1 }, 1)]).toEqual(
      options.map(() => 0),
    );
    const [first] = options;
    if (!first) throw new Error('no mix');
    expect(fitter.fit(first, { ...family, paintBits: -1 }, 1, 'exact')).toBeNull();
  });
});
