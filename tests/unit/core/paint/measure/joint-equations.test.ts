import { expect, test } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { drySurface } from '../../../../../app/core/colour/surface.ts';
import { defaultPaper } from '../../../../../app/core/paint/colour-of-washes.ts';
import { addPatch, settleAmounts } from '../../../../../app/core/paint/measure/joint-equations.ts';
import {
  emptyLook,
  type JointPatch,
  lookAtPatch,
  type PatchLook,
  type PatchShare,
  patchTarget,
} from '../../../../../app/core/paint/measure/joint-patch.ts';
import { seeded } from '../../../../support/seeded.ts';

// Paints are made in the test. What the code works out is held against slopes by small differences, and against the
// equations written out whole: all slopes in one table, the amounts eliminated from it (Golub, Pereyra 1973; Huber's
// weights held, as Gauss and Newton do). Beyond 2.5 units of noise a misfit is heeded less: the project's own.

const samples = 36;
const optics = { surface: drySurface, noise: 0.8, sampleNoise: 1.5 };
const random = seeded(3);
/** Spectra that bend: K, then S, per unit of amount. */
const paints = [0, 1, 2].map((paint) =>
  Float64Array.from({ length: 2 * samples }, (_, i) =>
    i < samples
      ? 0.05 + 0.25 * (1 + Math.sin(i / 5 + 2 * paint)) + 0.01 * random()
      : 0.08 + 0.04 * random(),
  ),
);

const reflectance = Float64Array.from({ length: samples }, (_, i) => 0.3 + 0.2 * Math.sin(i / 7));
const share = (paint: number, amount: number, doubt: number): PatchShare => ({
  paint,
  amount,
  doubt,
});
const patches: readonly (readonly [string, JointPatch])[] = [
  ['one paint', { lab: [62, 4, -3], shares: [share(1, 0.9, 0.15)], ground: defaultPaper }],
  [
    'two paints',
    { lab: [45, 2, 1], shares: [share(0, 1, 0.15), share(2, 0.8, 0.3)], ground: defaultPaper },
  ],
  [
    'amounts beyond doubt',
    { lab: [50, 2, 1], shares: [share(0, 1, 0), share(2, 0.5, 0)], ground: defaultPaper },
  ],
  [
    'one beyond doubt',
    { lab: [50, 2, 1], shares: [share(0, 1, 0), share(2, 0.5, 0.2)], ground: defaultPaper },
  ],
  [
    'a colour far off',
    { lab: [20, 30, 40], shares: [share(1, 0.6, 0.15), share(2, 0.5, 0.15)], ground: defaultPaper },
  ],
  [
    'a noise of its own',
    { lab: [55, 0, 0], shares: [share(0, 0.7, 0.15)], ground: defaultPaper, noise: 2 },
  ],
  [
    'a measured reflectance',
    {
      lab: [55, 0, 0],
      shares: [share(0, 0.7, 0.15), share(1, 0.4, 0.1)],
      ground: defaultPaper,
      reflectance,
    },
  ],
];

/** The look at a patch with its amounts settled. */
function settled(patch: JointPatch, own = paints): PatchLook {
  const look = emptyLook(patch.shares.length);
  settleAmounts(patchTarget(patch, optics), own, optics, look);
  return look;
}

/** The paints with one logarithm moved. */
const moved = (paint: number, i: number, by: number): Float64Array[] =>
  paints.map((own, n) =>
    own.map((value, j) => (n === paint && i === j ? value * Math.exp(by) : value)),
  );

const rowsOf = (
  patch: JointPatch,
  own: readonly Float64Array[],
  drift: ArrayLike<number>,
): number[] => {
  const look = emptyLook(patch.shares.length);
  look.drift.set(Array.from(drift));
  lookAtPatch(patchTarget(patch, optics), own, optics, look);
  return [
    ...Array.from(look.misfit, (misfit) => Math.sqrt(look.weight) * misfit),
    ...Array.from(look.sampleMisfit, (misfit) => Math.sqrt(look.sampleWeight) * misfit),
  ];
};
const tiny = 1e-5;

/** Misfits at the settled amounts, heeded as they are there, and their slopes along amounts and paints. */
function slowEquations(patch: JointPatch) {
  const look = settled(patch);
  const drift = look.drift.slice();
  const weights = Array.from({ length: 3 + samples }, (_, r) =>
    Math.sqrt(r < 3 ? look.weight : look.sampleWeight),
  );
  const misfitsOf = (own: readonly Float64Array[], amounts: ArrayLike<number>): number[] => {
    const plain = emptyLook(patch.shares.length);
    plain.drift.set(Array.from(amounts));
    lookAtPatch(patchTarget(patch, optics), own, optics, plain);
    return [...plain.misfit, ...plain.sampleMisfit].map(
      (misfit, r) => misfit * (weights[r] as number),
    );
  };
  const slopes = (at: (by: number) => number[]): number[] => {
    const [before, after] = [at(-tiny), at(tiny)];
    return after.map((value, r) => (value - (before[r] as number)) / (2 * tiny));
  };
  const misfits = misfitsOf(paints, drift);
  const ofAmounts = patch.shares.map((_, n) =>
    slopes((by) =>
      misfitsOf(
        paints,
        drift.map((own, m) => (m === n ? own + by : own)),
      ),
    ),
  );
  const ofPaint = (paint: number): number[][] =>
    Array.from({ length: 2 * samples }, (_, i) =>
      slopes((by) => misfitsOf(moved(paint, i, by), drift)),
    );
  return { look, misfits, ofAmounts, ofPaint };
}

const dot = (one: readonly number[], two: readonly number[]): number =>
  one.reduce((sum, value, i) => sum + value * (two[i] as number), 0);

test.each(patches)(
  '%s: amounts are settled where the cost is least, and what they cost is told',
  (_, patch) => {
    const { drift, cost } = settled(patch);
    const costAt = (amounts: ArrayLike<number>): number => {
      const look = emptyLook(patch.shares.length);
      look.drift.set(Array.from(amounts));
      lookAtPatch(patchTarget(patch, optics), paints, optics, look);
      const ofDrift = patch.shares.map(({ doubt }, n) =>
        doubt === 0 ? 0 : ((amounts[n] as number) / doubt) ** 2,
      );
      return ofDrift.reduce((sum, each) => sum + each, look.cost);
    };
    expect(costAt(drift)).toBeCloseTo(cost, 9);
    for (const [n, { doubt }] of patch.shares.entries()) {
      if (doubt === 0) expect(drift[n]).toBe(0);
      else
        for (const by of [-0.01, 0.01])
          expect(costAt(drift.map((own, m) => (m === n ? own + by : own)))).toBeGreaterThan(cost);
    }
  },
);

test.each(patches)(
  '%s: a misfit grows as it is off, and beyond 2.5 only in proportion',
  (_, patch) => {
    const { weight, sampleWeight, misfit, sampleMisfit } = settled(patch);
    const [length, ofSamples] = [Math.hypot(...misfit), Math.hypot(...sampleMisfit)];
    expect(weight).toBeCloseTo(Math.min(1, 2.5 / length), 12);
    expect(sampleWeight).toBeCloseTo(patch.reflectance ? Math.min(1, 2.5 / ofSamples) : 0, 12);
  },
);

test.each(patches)(
  '%s: its equations are those of all slopes with the amounts eliminated',
  (_, patch) => {
    const { look, misfits, ofAmounts, ofPaint } = slowEquations(patch);
    const { shares } = patch;
    const hold = shares.map(({ doubt }) => (doubt === 0 ? 0 : 1 / doubt ** 2));
    const free = shares.flatMap(({ doubt }, n) => (doubt === 0 ? [] : [n]));
    // Of one or two free amounts the inverse is written out.
    const own = free.map((n) =>
      free.map(
        (m) =>
          dot(ofAmounts[n] as number[], ofAmounts[m] as number[]) +
          (n === m ? (hold[n] as number) : 0),
      ),
    );
    const [[a = 1, b = 0] = [], [c = 0, d = 1] = []] = own;
    const inverse = [
      [d / (a * d - b * c), -b / (a * d - b * c)],
      [-c / (a * d - b * c), a / (a * d - b * c)],
    ];
    const size = 2 * samples * shares.length;
    const columns = shares.flatMap(({ paint }) => ofPaint(paint));
    const taken = columns.map((column) => free.map((n) => dot(column, ofAmounts[n] as number[])));
    const matrix = new Float64Array(size * size);
    const right = new Float64Array(size);
    const firsts = shares.map((_, n) => 2 * samples * n);
    addPatch({ matrix, right }, patchTarget(patch, optics), firsts, look);
    const scale = Math.max(...columns.map((column) => dot(column, column)));
    let worst = 0;
    for (let i = 0; i < size; i++) {
      const slope = -dot(columns[i] as number[], misfits);
      worst = Math.max(worst, Math.abs((right[i] as number) - slope) / Math.sqrt(scale));
      for (let j = 0; j < size; j++) {
        const [one, two] = [taken[i] as number[], taken[j] as number[]];
        const less = free.reduce(
          (sum, _, n) =>
            sum +
            free.reduce(
              (all, _, m) => all + (one[n] ?? 0) * (inverse[n]?.[m] ?? 0) * (two[m] ?? 0),
              0,
            ),
          0,
        );
        const wanted = j > i ? 0 : dot(columns[i] as number[], columns[j] as number[]) - less;
        worst = Math.max(worst, Math.abs((matrix[i * size + j] as number) - wanted) / scale);
      }
    }
    expect(worst).toBeLessThan(1e-5);
  },
);

test('a known paint has no place in the equations, and others stand where they are told to', () => {
  const patch = patches[6]?.[1] as JointPatch;
  const look = settled(patch);
  const size = 2 * samples * 2;
  const whole = { matrix: new Float64Array(size * size), right: new Float64Array(size) };
  addPatch(whole, patchTarget(patch, optics), [0, 72], look);
  const one = { matrix: new Float64Array(size * size), right: new Float64Array(size) };
  addPatch(one, patchTarget(patch, optics), [-1, 5], settled(patch));
  for (let i = 0; i < size; i++) {
    const within = i >= 5 && i < 77;
    expect(one.right[i]).toBeCloseTo(within ? (whole.right[i + 67] as number) : 0, 9);
    for (let j = 0; j <= i; j++) {
      const wanted = within && j >= 5 ? whole.matrix[(i + 67) * size + j + 67] : 0;
      expect(Math.abs((one.matrix[i * size + j] as number) - (wanted as number))).toBeLessThan(
        1e-9,
      );
    }
  }
});

test('slopes of a colour and of samples are those by small differences', () => {
  const patch = patches[6]?.[1] as JointPatch;
  const drift = [0.2, -0.1];
  const look = emptyLook(2);
  look.drift.set(drift);
  lookAtPatch(patchTarget(patch, optics), paints, optics, look);
  for (const [n, { paint }] of patch.shares.entries())
    for (const i of [0, 17, 35, 36, 60, 71]) {
      const [before, after] = [-tiny, tiny].map((by) => {
        const plain = emptyLook(2);
        plain.drift.set(drift);
        lookAtPatch(patchTarget(patch, optics), moved(paint, i, by), optics, plain);
        return plain;
      }) as [PatchLook, PatchLook];
      for (let c = 0; c < 3; c++) {
        const slope = ((after.misfit[c] as number) - (before.misfit[c] as number)) / (2 * tiny);
        expect(look.rows[c * 144 + n * 72 + i]).toBeCloseTo(slope, 5);
      }
      const k = i % samples;
      const slope =
        ((after.sampleMisfit[k] as number) - (before.sampleMisfit[k] as number)) / (2 * tiny);
      expect(look.sampleRow[n * 72 + i]).toBeCloseTo(slope, 5);
    }
  const lab: Lab = [look.lab[0] as number, look.lab[1] as number, look.lab[2] as number];
  // A patch that has the colour it is expected to have misses nothing.
  expect(Math.hypot(...rowsOf({ ...patch, lab }, paints, drift).slice(0, 3))).toBeCloseTo(0, 9);
});
