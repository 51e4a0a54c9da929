import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { inside, outside, type Surface } from '../../../../../app/core/colour/surface.ts';
import {
  layOver,
  mixSpectra,
  type PaintSpectra,
  paintLayer,
} from '../../../../../app/core/paint/layer.ts';
import {
  fitJointly as fitProblem,
  type JointPaint,
  jointSquares,
} from '../../../../../app/core/paint/measure/fit-jointly.ts';
import type { JointPatch, PatchOptics } from '../../../../../app/core/paint/measure/joint-patch.ts';
import { labSeen } from '../../../../support/paint/calibration.ts';
import { spreadOf } from '../../../../support/paint/measured-mixtures.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

/** The fit, its parts one by one. */
const fitJointly = (
  patches: readonly JointPatch[],
  paints: readonly JointPaint[],
  with_: PatchOptics,
  pause: () => Promise<void>,
) => fitProblem({ patches, paints, optics: with_ }, pause);

const noPause = async (): Promise<void> => {};
const surface: Surface = { k1: 0.025, k2: 0.6 };
const optics = { surface, noise: 0.5, sampleNoise: 0.5 };
const sought: JointPaint = { kind: 'sought', white: false };
const paper = new Float64Array(spectrumSize).fill(inside(0.87, surface));

/** A made-up paint: absorbs around a wavelength, scatters evenly; per unit of amount. */
const madePaint = (peakNm: number, widthNm: number, k: number, s: number): PaintSpectra => ({
  K: Float64Array.from(
    { length: spectrumSize },
    (_, i) => 0.02 * k + k * Math.exp(-(((380 + 10 * i - peakNm) / widthNm) ** 2)),
  ),
  S: new Float64Array(spectrumSize).fill(s),
});
const red = madePaint(520, 60, 1, 0.02);
const yellow = madePaint(430, 50, 1.2, 0.05);
const blue = madePaint(610, 70, 0.8, 0.01);
const green = madePaint(660, 90, 0.6, 0.08);
const four = [red, yellow, blue, green];

interface Dab {
  readonly paint: number;
  readonly amount: number;
}

/** Reflectance as seen of paints on paper, by the layer's own formulas. */
function seenOf(paints: readonly PaintSpectra[], dabs: readonly Dab[]): Float64Array {
  const amounts = dabs.map(({ amount }) => amount);
  const mixed = mixSpectra(
    dabs.map(({ paint }) => paints[paint] as PaintSpectra),
    amounts,
  );
  const load = amounts.reduce((sum, amount) => sum + amount, 0);
  const inner = layOver(paintLayer(mixed.K, mixed.S, load), paper, new Float64Array(spectrumSize));
  return inner.map((r) => outside(r, surface));
}

/** A patch as a perfect painter and a perfect instrument would have it. */
function madePatch(dabs: readonly Dab[], doubt: number, withSpectrum = false): JointPatch {
  const reflectance = seenOf(four, dabs);
  const shares = dabs.map((dab) => ({ ...dab, doubt }));
  const patch = { lab: labSeen(reflectance), ground: paper, shares };
  return withSpectrum ? { ...patch, reflectance } : patch;
}

const amounts = [0.25, 1, 4];
const steps = (doubt: number, withSpectrum = false): JointPatch[] =>
  four.flatMap((_, paint) =>
    amounts.map((amount) => madePatch([{ paint, amount }], doubt, withSpectrum)),
  );
/** A page of one-to-one mixes: every pair at one strength and at another. */
const page = (doubt: number, withSpectrum = false): JointPatch[] =>
  four.flatMap((_, one) =>
    four.slice(0, one).flatMap((_, two) =>
      [0.7, 3].map((amount) =>
        madePatch(
          [one, two].map((paint) => ({ paint, amount })),
          doubt,
          withSpectrum,
        ),
      ),
    ),
  );

const labOf = (paints: readonly PaintSpectra[], dabs: readonly Dab[]): Lab =>
  labSeen(seenOf(paints, dabs));

/** CIEDE2000 of mixes 1 : 3 and 3 : 1, which no page has, between the paints found and the true ones. */
const unseenMixes = (paints: readonly PaintSpectra[]): number[] =>
  four.flatMap((_, one) =>
    four.slice(0, one).flatMap((_, two) =>
      [
        [0.5, 1.5],
        [3, 1],
      ].map(([first, second]) => {
        const dabs = [
          { paint: one, amount: first as number },
          { paint: two, amount: second as number },
        ];
        return colourDifference(labOf(paints, dabs), labOf(four, dabs));
      }),
    ),
  );

/** Moves every logarithm a little and off the smooth. */
const shaken = (start: Float64Array, random: () => number): Float64Array =>
  start.map((log, i) => log + 0.4 * Math.sin(i / 5) + 0.2 * (random() - 0.5));

describe('the equations of a joint fit', () => {
  const random = seeded(8);
  // Everything at once: doubted amounts, spectra, misfits on both sides of Huber's bend, all kinds of paint.
  const patches = [...steps(0.2), ...page(0.1, true), ...page(0)].map((patch) => ({
    ...patch,
    lab: patch.lab.map((value) => value + 3 * (random() - 0.5)) as unknown as Lab,
  }));
  const kinds: JointPaint[] = [
    sought,
    { kind: 'known', spectra: yellow },
    { kind: 'alike', spectra: blue, doubt: 0.3 },
    { kind: 'sought', white: true },
  ];
  const squares = jointSquares({ patches, paints: kinds, optics });
  const place = shaken(squares.start, random);

  it('have the slope of the cost, by central differences along every fifth unknown', () => {
    const { right, cost } = squares.equationsAt(place);
    expect(cost).toBeCloseTo(squares.costAt(place), 6);
    expect(right.length).toBe(3 * 72);
    const steepest = Math.max(...right.map(Math.abs));
    for (let i = 0; i < place.length; i += 5) {
      const moved = (by: number): number =>
        squares.costAt(place.map((log, n) => (n === i ? log + by : log)));
      const slope = (moved(1e-4) - moved(-1e-4)) / 2e-4;
      expect(Math.abs(-2 * (right[i] as number) - slope), `${i}`).toBeLessThan(1e-5 * steepest);
    }
  });

  it('have the bend of the cost where nothing is misfit', () => {
    const exact = [...steps(0.2), ...page(0.1, true), ...page(0)];
    const alike: JointPaint[] = four.map((spectra) => ({ kind: 'alike', spectra, doubt: 0.5 }));
    const { start, equationsAt } = jointSquares({ patches: exact, paints: alike, optics });
    const { matrix, cost } = equationsAt(start);
    expect(cost).toBeLessThan(1e-12);
    const size = start.length;
    const most = Math.max(...matrix.map(Math.abs));
    for (const j of [3, 20, 45, 80, 130, 170, 200, 260]) {
      const rightAt = (by: number) =>
        equationsAt(start.map((log, n) => (n === j ? log + by : log))).right;
      const [up, down] = [rightAt(1e-3), rightAt(-1e-3)];
      for (let i = 0; i < size; i++) {
        const bend = ((down[i] as number) - (up[i] as number)) / 2e-3;
        const entry = matrix[Math.max(i, j) * size + Math.min(i, j)] as number;
        expect(Math.abs(entry - bend), `${i} ${j}`).toBeLessThan(1e-5 * most);
      }
    }
  });
});

describe('made-up paints', () => {
  it('are found again from spectra of ladders and mixes, K to 5 % where it is strong', async () => {
    const patches = [...steps(0, true), ...page(0, true)];
    const exact = { surface, noise: 0.02, sampleNoise: 0.02 };
    const { paints, converged } = await fitJointly(
      patches,
      [sought, sought, sought, sought],
      exact,
      noPause,
    );
    expect(converged).toBe(true);
    for (const [n, { K }] of paints.entries()) {
      for (let i = 0; i < spectrumSize; i++) {
        const truth = (four[n] as PaintSpectra).K[i] as number;
        if (truth > 0.1) expect((K[i] as number) / truth, `${n} ${i}`).toBeCloseTo(1, 1);
      }
    }
    expect(Math.max(...unseenMixes(paints))).toBeLessThan(0.1);
  });

  it('are found from colours alone, nearer with a page of mixes than from their ladders', async () => {
    const all = [sought, sought, sought, sought];
    const alone = await fitJointly(steps(0.05), all, optics, noPause);
    const paged = await fitJointly([...steps(0.05), ...page(0.05)], all, optics, noPause);
    expect(paged.converged).toBe(true);
    const before = spreadOf(unseenMixes(alone.paints)).mean;
    const after = spreadOf(unseenMixes(paged.paints)).mean;
    console.info(`Unseen mixes: ladders ${before.toFixed(2)}, with the page ${after.toFixed(2)}`);
    expect(after).toBeLessThan(0.7 * before);
    expect(after).toBeLessThan(0.6);
  });

  it('on a page of her own: one known, one alike but weaker, two sought, amounts 15 % off', async () => {
    const weaker = ({ K, S }: PaintSpectra): PaintSpectra => ({
      K: Array.from(K, (k) => k / 1.4),
      S: Array.from(S, (s) => s / 1.4),
    });
    const kinds: JointPaint[] = [
      { kind: 'known', spectra: red },
      { kind: 'alike', spectra: weaker(yellow), doubt: 0.4 },
      sought,
      sought,
    ];
    const random = seeded(21);
    // The amounts stated are not those painted.
    const painted = [...steps(0.15), ...page(0.15)].map((patch) => ({
      ...patch,
      shares: patch.shares.map((share) => ({
        ...share,
        amount: share.amount * Math.exp(0.5 * (random() - 0.5)),
      })),
    }));
    const fit = await fitJointly(painted, kinds, { ...optics, noise: 1 }, noPause);
    expect(fit.converged).toBe(true);
    for (const [i, k] of Array.from((fit.paints[0] as PaintSpectra).K).entries()) {
      expect(k).toBeCloseTo(red.K[i] as number, 12);
    }
    const before = spreadOf(unseenMixes([red, weaker(yellow), blue, green])).mean;
    const after = spreadOf(unseenMixes(fit.paints)).mean;
    console.info(
      `Her page: unseen mixes ${after.toFixed(2)}; with the tube as listed ${before.toFixed(2)}`,
    );
    expect(after).toBeLessThan(before);
    expect(after).toBeLessThan(2);
    for (const [n, patch] of painted.entries()) {
      const drift = fit.drifts[n] as Float64Array;
      expect(drift.length).toBe(patch.shares.length);
      expect(Math.max(...drift.map(Math.abs))).toBeLessThan(0.6);
      expect(colourDifference(fit.expected[n] as Lab, patch.lab)).toBeLessThan(3);
    }
  });
});

describe('a joint fit', () => {
  const patches = [...steps(0.1), ...page(0.1)];
  const all = four.map(() => sought);

  it('is the same every time, positive and finite, and leaves what it was given alone', async () => {
    const kept = structuredClone(patches);
    const once = await fitJointly(patches, all, optics, noPause);
    expect(await fitJointly(patches, all, optics, noPause)).toEqual(once);
    expect(patches).toEqual(kept);
    for (const { K, S } of once.paints) {
      for (const value of [...Array.from(K), ...Array.from(S)]) {
        expect(value).toBeGreaterThan(0);
        expect(value).toBeLessThan(1e6);
      }
    }
  });

  it('ends when it is cancelled', async () => {
    let pauses = 0;
    const cancelled = fitJointly(patches, all, optics, async () => {
      pauses++;
      if (pauses === 3) throw new DOMException('left', 'AbortError');
    });
    await expect(cancelled).rejects.toThrow('left');
    expect(pauses).toBe(3);
  });

  it('starts a paint that sends no light back as one that sends back 0.4 %', () => {
    const black = new Float64Array(spectrumSize);
    const lone = {
      lab: labSeen(black),
      reflectance: black,
      ground: paper,
      shares: [{ paint: 0, amount: 3, doubt: 0 }],
    };
    const { start } = jointSquares({ patches: [lone], paints: [sought], optics });
    // Through the layer and back (Beer's law): half of the logarithm, for one unit of three.
    const logK = Math.log(Math.log(inside(0.87, surface) / 0.004) / 2 / 3);
    for (const found of start.subarray(0, spectrumSize)) expect(found).toBeCloseTo(logK, 9);
  });

  it('says which paint no patch tells about', async () => {
    const fitted = (list: readonly JointPatch[]) => fitJointly(list, all, optics, noPause);
    await expect(fitted(page(0.1))).rejects.toThrow(/Paint 0 has no patch of its own/);
    const twice = [0, 0].map((paint) => ({ paint, amount: 1, doubt: 0 }));
    const paint = { paint: 9, amount: 1, doubt: 0 };
    const [first] = patches as [JointPatch];
    await expect(fitted([...patches, { ...first, shares: twice }])).rejects.toThrow(/twice/);
    await expect(fitted([...patches, { ...first, shares: [paint] }])).rejects.toThrow(/no paint 9/);
  });
});
