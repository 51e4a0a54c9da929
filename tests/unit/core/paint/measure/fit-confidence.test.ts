import { describe, expect, it, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { drySurface } from '../../../../../app/core/colour/surface.ts';
import { solveLinear } from '../../../../../app/core/numeric/solve.ts';
import { defaultPaper, defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import { layOver, mixSpectra, paintLayer } from '../../../../../app/core/paint/layer.ts';
import { expectedError, howSure } from '../../../../../app/core/paint/measure/fit-confidence.ts';
import {
  fitJointly,
  type JointProblem,
  jointSquares,
} from '../../../../../app/core/paint/measure/fit-jointly.ts';
import type { JointPatch } from '../../../../../app/core/paint/measure/joint-patch.ts';
import { sureWhyInWords } from '../../../../../app/core/words/paint/measured-paint.ts';
import { appWay, mean, measuredPaints } from '../../../../support/paint/calibration.ts';
import { paintNamed } from '../../../../support/paint/made-ladder.ts';
import { surenessFigures, surenessOf } from '../../../../support/paint/sureness.ts';

// On more charts and paints: `npm run measures`.
it('what is said of sureness goes with the true error of mixes, and "quite sure" is wrong in one of ten at most', async () => {
  const all = await surenessOf(measuredPaints, [11, 12, 13, 14, 15, 16], appWay);
  const { spearman, quite, wrong } = surenessFigures(all);
  console.info(
    `Spearman ${spearman.toFixed(2)} over ${all.length} charts; quite sure ${quite}, wrong ${wrong}`,
  );
  expect(all.length).toBeGreaterThan(65);
  expect(spearman).toBeLessThan(-0.5);
  expect(quite).toBeGreaterThan(20);
  expect(wrong / quite).toBeLessThan(0.1);
  // Sure by one half is an error of 4.5 expected: the errors there are come out as large.
  const expected = all.map(({ sure }) => 20.25 * (1 / sure - 1));
  const ratio = Math.sqrt(mean(all.map(({ error }) => error ** 2)) / mean(expected));
  expect(ratio).toBeGreaterThan(0.7);
  expect(ratio).toBeLessThan(1.2);
});

describe('the expected error', () => {
  const blue = mixSpectra([paintNamed('pb29-ultramarine-blue')], [1]);
  const yellow = mixSpectra([paintNamed('py74-arylide-yellow')], [1]);
  const white = mixSpectra([paintNamed('pw6-titanium-white')], [1]);
  const amounts = [1, 2, 4, 8, 16];
  const labOf = (amount: number): Lab =>
    labOfReflectance(
      layOver(paintLayer(blue.K, blue.S, amount), defaultPaper, new Float64Array(spectrumSize)),
    );
  const patchOf = (amount: number, lab = labOf(amount)): JointPatch => ({
    lab,
    shares: [{ paint: 0, amount, doubt: 0.15 }],
    ground: defaultPaper,
  });
  const problem: JointProblem = {
    patches: amounts.map((amount) => patchOf(amount)),
    paints: [
      { kind: 'sought', white: false },
      { kind: 'known', spectra: yellow },
      { kind: 'known', spectra: white },
    ],
    optics: { surface: drySurface, noise: 1.5, sampleNoise: 1 },
  };
  const probes = [1, 2].flatMap((other) =>
    [1, 6].map(
      (half): JointPatch => ({
        lab: defaultPaperLab,
        shares: [0, other].map((paint) => ({ paint, amount: half, doubt: 0 })),
        ground: defaultPaper,
      }),
    ),
  );
  const scraps = [1, 4, 16].map((amount) => patchOf(amount));
  const fitted = fitJointly(problem, async () => {});
  const stronger = [amounts.map((amount) => labOf(1.15 * amount))];
  const redder = [amounts.map((amount) => labOf(amount)).map(([l, a, b]): Lab => [l, a + 3, b])];

  it('leaves out how strong the paint is, where scraps tell, and nothing else', async () => {
    const fit = await fitted;
    const of = (faulty: readonly (readonly Lab[])[], seen = scraps): number =>
      expectedError(problem, fit, { faulty, probes, scraps: seen });
    const alone = of([]);
    expect(alone).toBeGreaterThan(0.5);
    expect(of([], [])).toBeGreaterThan(1.05 * alone);
    // A fault that makes every step look stronger alike is no fault once a scrap has been brushed.
    const byStrength = (seen: readonly JointPatch[]): number =>
      of(stronger, seen as JointPatch[]) ** 2 - of([], seen as JointPatch[]) ** 2;
    expect(byStrength([])).toBeGreaterThan(0.5);
    expect(byStrength(scraps)).toBeLessThan(0.15 * byStrength([]));
    expect(of(redder)).toBeGreaterThan(1.1 * alone);
  });

  it('grows with how badly the steps fit, from what is usual', async () => {
    const { place } = await fitted;
    const of = (cost: number): number =>
      expectedError(problem, { place, cost }, { faulty: [], probes, scraps });
    // Fifteen figures that are off as is usual cost 15, and leave the noise as it is.
    const squares = jointSquares(problem);
    const { matrix, right } = squares.equationsAt(place);
    const [probe] = probes as [JointPatch];
    const spread = squares.slopesAt(place, probe).map((row) => {
      const solution = Float64Array.from(row);
      expect(solveLinear(Float64Array.from(matrix), solution, right.length)).toBe(true);
      return row.reduce((sum, slope, i) => sum + slope * (solution[i] as number), 0);
    });
    const plain = { faulty: [], probes: [probe], scraps: [] };
    expect(expectedError(problem, { place, cost: 15 }, plain)).toBeCloseTo(
      Math.sqrt(spread.reduce((sum, each) => sum + each, 0)),
      6,
    );
    // What else is found counts beside the ten figures' weight of the usual.
    expect(of(15 + 4 * 25) / of(15)).toBeCloseTo(Math.sqrt(5), 6);
    expect(of(15)).toBeGreaterThan(of(0));
    expect(of(0)).toBeCloseTo(of(15) * Math.sqrt(10 / 25), 6);
  });

  it('is less with more steps, more with fewer, most with strong ones alone', async () => {
    const fit = await fitted;
    const errorOf = async (some: readonly number[]): Promise<number> => {
      const fewer = { ...problem, patches: some.map((amount) => patchOf(amount)) };
      return expectedError(fewer, await fitJointly(fewer, async () => {}), {
        faulty: [],
        probes,
        scraps,
      });
    };
    const five = expectedError(problem, fit, { faulty: [], probes, scraps });
    expect(await errorOf([2, 8])).toBeGreaterThan(five);
    expect(await errorOf([8, 12, 16])).toBeGreaterThan(1.5 * five);
  });
});

describe('how sure', () => {
  const facts = {
    loads: [1, 2, 4, 8, 16],
    thinnestShare: 0.2,
    mixError: 2,
    misfit: 1,
    hidingSeen: true,
    uneven: false,
    isWhite: false,
  };

  test('is told by the expected error alone, half at a difference seen side by side', () => {
    expect(howSure({ ...facts, mixError: 4.5 }).sure).toBeCloseTo(0.5, 9);
    const { sure } = howSure(facts);
    expect(sure).toBeCloseTo(1 / (1 + (2 / 4.5) ** 2), 9);
    // None of these counts a second time.
    for (const more of [
      { loads: [2, 8] },
      { hidingSeen: false },
      { uneven: true },
      { thinnestShare: 0.9 },
      { misfit: 4.9 },
    ])
      expect(howSure({ ...facts, ...more }).sure).toBe(sure);
  });

  test('is never quite sure where steps disagree, nor of a white on white paper', () => {
    const least = howSure({ ...facts, mixError: 0.5, misfit: 5.1 });
    expect(sureWhyInWords(least.why)).toMatch(/^The steps do not agree/);
    expect(least.sure).toBeLessThan(0.7);
    expect(howSure({ ...facts, mixError: 20, misfit: 5.1 }).sure).toBeLessThan(0.05);
    const white = { ...facts, isWhite: true, hidingSeen: false, mixError: 0.5 };
    expect(sureWhyInWords(howSure(white).why)).toMatch(/^A white on white paper/);
    expect(howSure(white).sure).toBeLessThan(0.2);
    expect(howSure({ ...white, hidingSeen: true }).sure).toBeGreaterThan(0.9);
  });

  test('strong steps are blamed where mixes are in doubt, not where it is quite sure', () => {
    const strong = { ...facts, thinnestShare: 0.9 };
    expect(sureWhyInWords(howSure({ ...strong, mixError: 6 }).why)).toMatch(/^Only strong steps/);
    expect(sureWhyInWords(howSure(strong).why)).toMatch(
      /^Five steps and what lies over the black line agree/,
    );
    expect(sureWhyInWords(howSure({ ...facts, mixError: 6 }).why)).toMatch(/^Five steps/);
    expect(sureWhyInWords(howSure({ ...facts, uneven: true }).why)).toMatch(/^Not every frame/);
    expect(sureWhyInWords(howSure({ ...facts, loads: [1, 2, 4] }).why)).toMatch(
      /^With only three steps/,
    );
    expect(sureWhyInWords(howSure({ ...facts, hidingSeen: false }).why)).toMatch(
      /a step painted over a black line/,
    );
  });
});
