import { expect, test } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { labOfReflectance } from '../../../../app/core/colour/spectrum.ts';
import { drySurface } from '../../../../app/core/colour/surface.ts';
import {
  laidBy,
  layersOn,
  mendShape,
  stacked,
  staysOf,
  timesFor,
} from '../../../../app/core/compare/mend.ts';
import { creamFrom } from '../../../../app/core/paint/consistency.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';

// Shares that stay of lifted paint, 0.3, 0.6 and all by how it stains; white set back up to 100 mm2; paint as thick as
// cream on no more than 20 cm2; missing under 0.15 of what was planned: (own). Colours are reckoned from the paints.

const ids = ['py43-yellow-ochre', 'pb29-ultramarine-blue', 'pg18-viridian'] as const;
const [ochre, blue, green] = ids;
const stains = (staining: 0 | 1 | 2 | null) =>
  paintBox
    .filter(({ id }) => (ids as readonly string[]).includes(id))
    .map((paint) => ({ ...paint, properties: { ...paint.properties, staining } }));

const mix = (id: string, paint: string, load: number, family = 1, more = {}) => ({
  ...{ id, passage: 'sheet', family, parts: [{ paint, parts: 1 }], load, ...more },
});
const slot = (family: number, band: number, reserve = false) => ({
  ...{ passage: 'sheet', family, band, reserve },
});

type Steps = readonly {
  mixes: readonly string[];
  slots: readonly number[];
  after: readonly Lab[];
}[];

/** A plan with an ochre slot, a darker ochre slot, a white and a blue slot; `after` as it is reckoned. */
function madePlan(
  steps: Steps,
  mixes = [
    mix('o', ochre, 6, 1, { weaker: { bands: [2], load: 2 } }),
    mix('b', blue, 5, 2),
    mix('g', green, 4, 3),
  ],
  staining: 0 | 1 | 2 | null = 0,
): WashPlan {
  return {
    paper: labOfReflectance(
      stacked({ optics: [], surface: drySurface } as never, [], 1),
      drySurface,
    ),
    slots: [slot(1, 2), slot(1, 3), slot(0, 1, true), slot(2, 3)],
    ...{ optics: stains(staining), surface: drySurface, mixes },
    steps: steps.map((step, i) => ({ n: i + 1, kind: 'wash', ...step })),
  } as unknown as WashPlan;
}

const after: readonly Lab[] = [0, 1, 2, 3].map(() => [50, 0, 0] as const);
const oneWash: Steps = [{ mixes: ['o', 'b'], slots: [0, 1, 3], after }];
const twoWashes: Steps = [
  { mixes: ['o'], slots: [0, 1], after },
  { mixes: ['o'], slots: [1], after },
];
const seen = (plan: WashPlan, at: number, upTo = 1, times = 1): Lab =>
  labOfReflectance(stacked(plan, layersOn(plan, at, upTo), times), drySurface);
/** A colour that much lighter, its hue kept. */
const lighter = ([l, a, b]: Lab, by: number): Lab => [l + by, a, b];

test('a step lays the mix of the slot, its weaker strength where it is for that band, and nothing elsewhere', () => {
  const plan = madePlan([...oneWash, { mixes: [], slots: [0], after }]);
  const [step, bare] = plan.steps as [WashPlan['steps'][0], WashPlan['steps'][0]];
  expect(laidBy(plan, step, 0)).toMatchObject({ load: 2, parts: [{ paint: ochre }] });
  expect(laidBy(plan, step, 1)).toMatchObject({ load: 6, parts: [{ paint: ochre }] });
  expect(laidBy(plan, step, 3)).toMatchObject({ load: 5, parts: [{ paint: blue }] });
  expect(laidBy(plan, step, 2)).toBeNull(); // not among its slots
  expect(laidBy(plan, step, 9)).toBeNull();
  expect(laidBy(plan, bare, 0)).toBeNull();
  expect(laidBy(plan, { ...step, kind: 'lift' }, 0)).toBeNull();
  const water = madePlan(oneWash, [{ ...mix('o', ochre, 6), parts: [] }, mix('b', blue, 5, 2)]);
  expect(laidBy(water, step, 0)).toBeNull();
  expect(
    laidBy({ ...plan, slots: [{ ...plan.slots[0], passage: 'subject' }] } as never, step, 0),
  ).toBeNull();
});

test('the layers on a slot are those of its washes up to a step, that step with them', () => {
  const plan = madePlan(twoWashes);
  expect([0, 1, 2].map((upTo) => layersOn(plan, 1, upTo).length)).toEqual([0, 1, 2]);
  expect(layersOn(plan, 0, 2).length).toBe(1);
  const [one, two] = [seen(plan, 1, 1)[0], seen(plan, 1, 2)[0]];
  expect(two).toBeLessThan(one - 3);
});

test('by its lightness it is told how many times the planned paint lies there, from none to four times', () => {
  const plan = madePlan(oneWash);
  const layers = layersOn(plan, 1, 1);
  for (const times of [0.05, 0.4, 1, 1.7, 3.5]) {
    expect(timesFor(plan, layers, seen(plan, 1, 1, times)[0])).toBeCloseTo(times, 2);
  }
  expect(timesFor(plan, layers, plan.paper[0])).toBe(0);
  expect(timesFor(plan, layers, plan.paper[0] + 5)).toBe(0);
  expect(timesFor(plan, layers, 1)).toBeCloseTo(4, 2);
  // To a thousandth of the planned paint: no less than lies there.
  const found = timesFor(plan, layers, seen(plan, 1, 1, 1.234)[0]);
  expect(found - 1.234).toBeGreaterThanOrEqual(0);
  expect(found - 1.234).toBeLessThanOrEqual(1e-3);
});

test('the paint that stains most decides how much stays, unknown counts as some', () => {
  const of = (...staining: (0 | 1 | 2 | null)[]): number => {
    const plan = {
      ...madePlan(oneWash),
      optics: staining.map((one, i) => ({
        ...paintBox[i],
        id: `${i}`,
        properties: { staining: one },
      })),
    } as unknown as WashPlan;
    return staysOf(
      plan,
      staining.map((_, i) => ({ parts: [{ paint: `${i}`, parts: 1 }], load: 1 })),
    );
  };
  expect([of(0), of(1), of(2), of(null)]).toEqual([0.3, 0.6, 1, 0.6]);
  expect([of(0, 1), of(2, 0), of(null, 0)]).toEqual([0.6, 1, 0.6]);
  expect(of()).toBe(0.3);
});

test('what came out too light is glazed so that it comes to the planned lightness, with paint it has', () => {
  const plan = madePlan(oneWash);
  const expected = seen(plan, 1);
  const measured = seen(plan, 1, 1, 0.6);
  const mended = mendShape(plan, 1, 1, expected, measured, 5000);
  expect(mended.mending).toBe('glaze');
  expect(mended.parts).toEqual([{ paint: ochre, parts: 1 }]);
  expect(mended.predicted[0]).toBeCloseTo(expected[0], 2);
  expect(mended.predicted).toEqual([0, 1, 2].map((c) => expect.closeTo(expected[c] as number, 0)));
  expect(mended.load).toBeGreaterThan(1);
  expect(mended.load).toBeLessThan(4); // 0.4 of the 6 ml planned
});

test('what holds under 0.15 of its paint is missing and laid, from there on it is glazed', () => {
  const plan = madePlan(oneWash);
  const mending = (times: number): string =>
    mendShape(plan, 1, 1, seen(plan, 1), seen(plan, 1, 1, times), 5000).mending;
  expect([mending(0), mending(0.14), mending(0.16)]).toEqual([
    'lay-missing',
    'lay-missing',
    'glaze',
  ]);
  // A white that is lighter than planned was not to be painted at all.
  const white: Lab = [88, 0, 2];
  expect(mendShape(plan, 1, 2, white, lighter(white, 5), 5000).mending).toBe('glaze');
});

test('a glaze is of the paints of its own family, unless another comes more than 1 CIEDE2000 nearer', () => {
  const plan = madePlan(oneWash);
  const bluish: Lab = [seen(plan, 1)[0] - 4, 0, -10];
  const taken = mendShape(plan, 1, 1, bluish, lighter(bluish, 8), 5000);
  expect(taken.parts?.[0]?.paint).toBe(blue);
  // Twice the same puddle but for a little green: the nearer one is not nearer by 1.
  const nearly = madePlan(oneWash, [
    mix('o', ochre, 6, 1),
    {
      ...mix('n', ochre, 6, 2),
      parts: [
        { paint: ochre, parts: 60 },
        { paint: green, parts: 1 },
      ],
    },
  ]);
  const other = mendShape(nearly, 1, 1, seen(nearly, 1), seen(nearly, 1, 1, 0.6), 5000);
  expect(other.parts).toHaveLength(1);
  const wanted = mendShape(nearly, 1, 3, other.predicted, seen(nearly, 1, 1, 0.6), 5000);
  expect(wanted.parts).toHaveLength(2); // on a slot of the other family that one is its own
});

test('on more than 20 cm2 no glaze is as thick as cream; where none can do it, it is left', () => {
  const plan = madePlan([{ mixes: ['b'], slots: [], after }], [mix('b', blue, 5, 2)]);
  const dark: Lab = [40, 10, -40];
  const small = mendShape(plan, 1, 1, dark, plan.paper, 2000);
  expect(small).toMatchObject({ mending: 'glaze', consistency: 'cream' });
  expect(small.load).toBeGreaterThan(creamFrom);
  expect(small.load).toBeLessThan(1.1 * creamFrom);
  const large = mendShape(plan, 1, 1, dark, plan.paper, 2001);
  expect(large).toEqual({ mending: 'leave-as-is', predicted: plan.paper });
  expect(mendShape(plan, 1, 1, [43, 10, -40], plan.paper, 5000).mending).toBe('glaze'); // thinner
  const none = madePlan(oneWash, []);
  expect(mendShape(none, 1, 1, dark, [60, 1, 2], 2000)).toEqual({
    ...{ mending: 'leave-as-is', predicted: [60, 1, 2] },
  });
});

test.each([
  ['too light', 0.6, 'stronger-next'],
  ['too dark', 1.5, 'weaker-next'],
] as const)('what is %s before its next wash is put right by that wash', (_, times, mending) => {
  const plan = madePlan(twoWashes);
  const [expected, planned] = [seen(plan, 1, 1), seen(plan, 1, 2)];
  const steps = plan.steps.map((step) => ({
    ...step,
    after: step.after.map((lab, i) => (i === 1 && step.n === 2 ? planned : lab)),
  }));
  const measured = seen(plan, 1, 1, times);
  const mended = mendShape({ ...plan, steps }, 1, 1, expected, measured, 5000);
  expect(mended).toMatchObject({ mending, step: 2, parts: [{ paint: ochre }] });
  // One layer over another of the same paint: together as much as was planned of both.
  expect(mended.load).toBeCloseTo(6 * (2 - times), 1);
  expect(mended.predicted).toEqual([0, 1, 2].map((c) => expect.closeTo(planned[c] as number, 1)));
  // Whose slot runs through several puddles: as far off as its own mix will be.
  const elsewhere = steps.map((step) => ({
    ...step,
    after: step.after.map(() => [40, 3, 7] as Lab),
  }));
  const other = mendShape({ ...plan, steps: elsewhere }, 1, 1, expected, measured, 5000);
  expect(other.predicted).toEqual([40, 3, 7].map((n) => expect.closeTo(n, 1)));
  const unknown = steps.map((step) => ({ ...step, after: [] }));
  expect(
    mendShape({ ...plan, steps: unknown }, 1, 1, expected, measured, 5000).step,
  ).toBeUndefined();
});

test('a wash that is over is not the next one', () => {
  const plan = madePlan(twoWashes);
  const [expected, measured] = [seen(plan, 1, 2), seen(plan, 1, 2, 0.7)];
  expect(mendShape(plan, 2, 1, expected, measured, 5000).mending).toBe('glaze');
});

test('what is too dark is lifted to what was planned, or as far as its paint lets go', () => {
  const plan = madePlan(oneWash);
  const expected = seen(plan, 1);
  const tooDark = (times: number, staining: 0 | 1 | 2 = 0, areaMm2 = 5000) =>
    mendShape(
      madePlan(oneWash, undefined, staining),
      1,
      1,
      expected,
      seen(plan, 1, 1, times),
      areaMm2,
    );
  const back = tooDark(1.5);
  expect(back.mending).toBe('lift');
  expect(back.predicted).toEqual([0, 1, 2].map((c) => expect.closeTo(expected[c] as number, 1)));
  // Of 1.9 times as much 0.6 stay where the paint stains a little.
  const some = tooDark(1.9, 1);
  expect(some.mending).toBe('lift');
  expect(some.predicted).toEqual(
    [0, 1, 2].map((c) => expect.closeTo(seen(plan, 1, 1, 1.14)[c] as number, 1)),
  );
  expect(tooDark(1.5, 2)).toEqual({ mending: 'leave-as-is', predicted: seen(plan, 1, 1, 1.5) });
  expect(tooDark(1.5, 2, 101).mending).toBe('leave-as-is');
  expect(tooDark(1.5, 2, 100)).toEqual({ mending: 'opaque-white', predicted: [92, 0, 1] });
});

test('a lifted slot keeps the hue it was expected with', () => {
  const plan = madePlan(oneWash);
  const own = seen(plan, 1);
  const expected: Lab = [own[0], own[1] + 4, own[2] - 7];
  const { predicted } = mendShape(plan, 1, 1, expected, seen(plan, 1, 1, 1.5), 5000);
  expect(predicted[1] - own[1]).toBeCloseTo(4, 1);
  expect(predicted[2] - own[2]).toBeCloseTo(-7, 1);
});

test('a white that was run over is set back where it is small, else lifted by the paints of the plan', () => {
  const plan = madePlan(oneWash);
  const [paper, soiled] = [
    [96, 0, 2],
    [86, 4, -8],
  ] as const;
  expect(mendShape(plan, 1, 2, paper, soiled, 100)).toEqual({
    ...{ mending: 'opaque-white', predicted: [92, 0, 1] },
  });
  const lifted = mendShape(plan, 1, 2, paper, soiled, 101);
  expect(lifted.mending).toBe('lift');
  // Of what lies there 0.3 stay.
  expect(lifted.predicted).toEqual([93, 1.2, -1].map((n) => expect.closeTo(n, 9)));
  expect(colourDifference(lifted.predicted, paper)).toBeLessThan(colourDifference(soiled, paper));
  expect(mendShape(madePlan(oneWash, undefined, 2), 1, 2, paper, soiled, 101).mending).toBe(
    'leave-as-is',
  );
});
