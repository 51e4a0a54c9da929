import { describe, expect, test } from 'vitest';
import { listMaterials } from '../../../../app/core/plan/list-materials.ts';
import type { Mix, Step, WashPlan } from '../../../../app/core/plan/plan.ts';
import { amountInWords, puddleAmount } from '../../../../app/core/plan/puddle-amount.ts';
import type { Slot } from '../../../../app/core/reading/slot.ts';
import { planSample } from '../../../support/storage/kept-samples.ts';

const slot = (band: number, family: number, share: number): Slot => ({
  passage: 'sheet',
  band,
  family,
  share,
  lab: [50, 0, 0],
  target: [50, 0, 0],
  reserve: false,
  tones: { clamped: 50, floored: 50 },
  shapes: 1,
  smallShapes: 0,
  largestMm2: 100,
});
const slots = [slot(1, 1, 0.5), slot(2, 1, 0.25), slot(2, 2, 0.25)];
const row = (id: string, family: number, load: number, more: Partial<Mix> = {}): Mix => ({
  id,
  puddle: 'A',
  wash: 1,
  passage: 'sheet',
  family,
  parts: [
    { paint: 'brown', parts: 1 },
    { paint: 'blue', parts: 3 },
  ],
  load,
  consistency: 'milk',
  target: null,
  expected: [60, 0, 0],
  expectedWet: [50, 0, 0],
  ...more,
});
const sample = planSample('p');
const wash = (more: Partial<Step> = {}): Step => ({
  ...(sample.steps[0] as Step),
  key: 'wash/sheet/1',
  technique: 'wet on dry',
  slots: [0, 1, 2],
  mixes: ['a', 'b'],
  ...more,
});
const planOf = (mixes: Mix[], steps: Step[] = [wash()]): WashPlan => ({
  ...sample,
  slots,
  mixes,
  steps,
});
/** A quarter of a square metre. */
const sheet = { widthMm: 500, heightMm: 500 };

describe('how much of a puddle', () => {
  // By hand: 0.25 m2 x 3/4 x 60 g/m2 x 1.5 = 16.875 ml; load 3 lays 7.5 g/m2 of paint: 2.109375 ml, 3 to 1.
  test('area by water, half as much again; paint by load, shared out by parts', () => {
    const a = row('a', 1, 3);
    const amount = puddleAmount(planOf([a]), [a], sheet);
    expect(amount?.ml).toBeCloseTo(16.875, 6);
    expect(amount?.waterMl).toBeCloseTo(14.765625, 6);
    expect(amount?.paints.map(({ paint }) => paint)).toEqual(['blue', 'brown']);
    expect(amount?.paints.map(({ ml }) => ml)).toEqual([
      expect.closeTo(1.58203125, 6),
      expect.closeTo(0.52734375, 6),
    ]);
    expect(amount?.paints[0]?.cm).toBeCloseTo(7.91, 2);
  });

  test('rows of one puddle add up; twice the sheet is twice the puddle', () => {
    const rows = [row('a', 1, 3.5), row('b', 2, 3.5)];
    const both = puddleAmount(planOf(rows), rows, sheet)?.ml ?? 0;
    expect(both).toBeCloseTo(22.5, 6);
    expect(puddleAmount(planOf(rows), rows, { widthMm: 1000, heightMm: 500 })?.ml).toBeCloseTo(
      2 * both,
      6,
    );
  });

  test('lighter parts take less paint in as much water', () => {
    const even = row('a', 1, 3);
    const { weaker } = row('a', 1, 3, {
      weaker: { bands: [1], load: 0.3, consistency: 'tea', target: null, expected: [80, 0, 0] },
    });
    const thin = { ...even, ...(weaker && { weaker }) };
    const [one, two] = [even, thin].map((mix) => puddleAmount(planOf([mix]), [mix], sheet));
    expect(two?.ml).toBeCloseTo(one?.ml ?? 0, 6);
    // 0.75 g/m2 of paint on an eighth of a square metre, 7.5 g/m2 on half as much; half as much again.
    expect((two?.ml ?? 0) - (two?.waterMl ?? 0)).toBeCloseTo(0.140625 + 0.703125, 6);
  });

  test('the stronger, the more paint, and never more than all', () => {
    const shares = [0.05, 0.35, 0.7, 2, 6, 16, 24, 32].map((load) => {
      const mix = row('a', 1, load);
      const plan = planOf([mix], [wash({ waterGramsPerSquareMetre: 40 })]);
      const { ml, waterMl } = puddleAmount(plan, [mix], sheet) ?? { ml: 1, waterMl: 1 };
      return 1 - waterMl / ml;
    });
    expect(shares).toEqual([...shares].sort((x, y) => x - y));
    expect(shares[0]).toBeGreaterThan(0);
    expect(shares.at(-1)).toBe(1);
  });

  // Common practice, no source: a pea of paint, some 0.2 to 0.3 ml, to a tablespoon (15 ml) of thin wash.
  test('a tablespoon of thin wash takes about a pea of paint', () => {
    const mix = row('a', 1, 0.5);
    const { ml, waterMl } = puddleAmount(planOf([mix]), [mix], sheet) ?? { ml: 1, waterMl: 1 };
    const pea = ((ml - waterMl) / ml) * 15;
    expect(pea).toBeGreaterThan(0.1);
    expect(pea).toBeLessThan(0.4);
  });

  test('wet-in-wet asks for no larger puddle: the rest is clean water; less water is heeded', () => {
    const a = row('a', 1, 3.5);
    const ml = (step: Partial<Step>) => puddleAmount(planOf([a], [wash(step)]), [a], sheet)?.ml;
    expect(ml({ technique: 'wet-in-wet', waterGramsPerSquareMetre: 150 })).toBeCloseTo(16.875, 6);
    expect(ml({ waterGramsPerSquareMetre: 40 })).toBeCloseTo(11.25, 6);
  });

  test('a fluid puddle is never too small to load a brush; thick paint may be', () => {
    const small = { widthMm: 50, heightMm: 50 };
    const [thin, thick] = [3, 24].map((load) => {
      const mix = row('a', 1, load);
      return puddleAmount(planOf([mix], [wash({ waterGramsPerSquareMetre: 40 })]), [mix], small);
    });
    expect(thin?.ml).toBeCloseTo(2.5, 9);
    expect((thin?.ml ?? 0) - (thin?.waterMl ?? 0)).toBeCloseTo(7.5 / 16, 6);
    expect(thick?.ml).toBeCloseTo(0.09, 6);
  });

  test('no wash takes it: nothing', () => {
    const a = row('a', 1, 3.5);
    expect(puddleAmount(planOf([a], []), [a], sheet)).toBeNull();
    expect(puddleAmount(planOf([a], [wash({ slots: [] })]), [a], sheet)).toBeNull();
    expect(puddleAmount(planOf([]), [], sheet)).toBeNull();
  });
});

test.each([
  [10, 7.5, 12.5, 2.5, 'About 10 ml: 1.5 teaspoons of water, 13 cm of blue, 2.5 cm of brown.'],
  [
    4,
    3.7,
    1.2,
    0.2,
    'About 4 ml: three quarters of a teaspoon of water, 1 cm of blue, a touch of brown.',
  ],
  [0.4, 0.2, 0.8, 0.2, 'About under 1 ml: a few drops of water, 8 mm of blue, a touch of brown.'],
  [5.6, 5, 1, 0.3, 'About 5.5 ml: one teaspoon of water, 1 cm of blue, 3 mm of brown.'],
])('%s ml in words', (ml, waterMl, blue, brown, words) => {
  const paints = [
    { paint: 'blue', ml: 0, cm: blue },
    { paint: 'brown', ml: 0, cm: brown },
  ];
  expect(amountInWords({ ml, waterMl, paints }, (id) => id)).toBe(
    words.replace('About under', 'Under'),
  );
});

test('laid out: paints that are used, each brush once, and what the techniques ask for', () => {
  const entry = (id: string) => ({ id, ci: 'PB29', name: id, why: '', darkest: 20 });
  const plan = {
    ...planOf(
      [row('a', 1, 2)],
      [
        wash({ brush: 'a large mop; a round 6 for the small shapes' }),
        wash({ brush: 'a large mop', technique: 'wet-in-wet' }),
        wash({ kind: 'mask' }),
        wash({ kind: 'accents', brush: 'a round 6; a rigger for lines' }),
      ],
    ),
    palette: ['blue', 'brown', 'green'].map(entry),
  };
  const rows = listMaterials(plan);
  expect(rows.find(({ name }) => name === 'Paints')?.things).toEqual([
    'blue (PB29)',
    'brown (PB29)',
  ]);
  expect(rows.find(({ name }) => name === 'Brushes')?.things).toEqual([
    'a large mop',
    'a round 6',
    'a rigger for lines',
  ]);
  const besides = rows.find(({ name }) => name === 'Besides')?.things.join();
  expect(besides).toMatch(/clean water.*masking fluid/);
  expect(besides).not.toMatch(/opaque white/);
  expect(listMaterials({ ...plan, steps: [] }).map(({ name }) => name)).toEqual([
    'Paints',
    'Besides',
  ]);
});
