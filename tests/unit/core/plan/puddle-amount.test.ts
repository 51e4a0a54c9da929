import { describe, expect, test } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { loadOf } from '../../../../app/core/paint/consistency.ts';
import { thinningFor } from '../../../../app/core/paint/thinning.ts';
import { listMaterials } from '../../../../app/core/plan/list-materials.ts';
import type { Mix, Step, WashPlan } from '../../../../app/core/plan/plan.ts';
import { puddleAmount } from '../../../../app/core/plan/puddle-amount.ts';
import type { Slot } from '../../../../app/core/reading/slot.ts';
import { amountInWords } from '../../../../app/core/words/plan/amounts.ts';
import { planSample } from '../../../support/storage/kept-samples.ts';

const slot = (band: number, family: number, share: number): Slot => ({
  passage: 'sheet',
  band,
  family,
  share,
  lab: [50, 0, 0],
  target: [50, 0, 0],
  reserve: false,
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
const paler: Lab = [80, 0, 0];
/** A quarter of a square metre. */
const sheet = { widthMm: 500, heightMm: 500 };

describe('how much of a puddle', () => {
  test('area by load, half as much again; whole parts out of a strip that is enough', () => {
    const a = row('a', 1, 6);
    const amount = puddleAmount(planOf([a]), [a], sheet);
    const asked = 0.25 * 0.75 * 6 * 1.5; // 1.6875 ml of paint
    const told = amount?.paints.reduce((all, { ml }) => all + ml, 0) ?? 0;
    expect(told).toBeGreaterThanOrEqual(asked);
    expect(told).toBeLessThanOrEqual(asked * 1.6);
    expect(amount?.paints.map(({ paint }) => paint)).toEqual(['blue', 'brown']);
    const [blue, brown] = amount?.paints ?? [];
    expect(blue?.mm).toBe(3 * (brown?.mm ?? 0));
    expect((brown?.mm ?? 0) % 5).toBe(0);
    expect(brown?.ml).toBeCloseTo(0.02 * (brown?.mm ?? 0), 9);
  });

  test('water as drops and spoons measure it leaves the load asked for', () => {
    for (const load of [0.6, 1, 2.6, 4, 6.4, 9, 11.4, 14, 18]) {
      for (const share of [1, 0.5, 0.2]) {
        const a = row('a', 1, load);
        const small = { widthMm: 500 * share, heightMm: 500 };
        const amount = puddleAmount(planOf([a]), [a], small);
        const { waterMl = 0, paints = [] } = amount ?? {};
        const paint = paints.reduce((all, { ml }) => all + ml, 0);
        expect(amount?.ml).toBeCloseTo(waterMl + paint, 9);
        expect(amount?.concentration).toBeCloseTo(paint / waterMl, 9);
        expect(Math.abs(loadOf(paint / waterMl) / load - 1)).toBeLessThanOrEqual(0.07);
        const steps = waterMl / (waterMl < 1.25 ? 0.05 : 1.25);
        expect(steps).toBeCloseTo(Math.round(steps), 6);
        expect(paints.every(({ mm }) => Number.isInteger(mm) && mm >= 1)).toBe(true);
      }
    }
  });

  // Common practice, no source: a tablespoon and more for the ground of a quarter sheet.
  test('the ground of a quarter sheet takes about a tablespoon', () => {
    const quarter = { widthMm: 381, heightMm: 279 };
    const ground = wash({ slots: [0], mixes: ['a'] });
    const whole = { ...planOf([row('a', 1, 1)], [ground]), slots: [slot(1, 1, 1)] };
    for (const load of [0.5, 1, 2, 3]) {
      const a = row('a', 1, load);
      expect(puddleAmount({ ...whole, mixes: [a] }, [a], quarter)?.ml).toBeGreaterThanOrEqual(13.5);
    }
    const thick = row('a', 1, 6.4);
    expect(puddleAmount({ ...whole, mixes: [thick] }, [thick], quarter)?.ml).toBeGreaterThan(11);
  });

  test('rows of one puddle add up and are mixed for the strongest; four times the sheet is about four times the puddle', () => {
    const rows = [row('a', 1, 1), row('b', 2, 6)];
    const both = puddleAmount(planOf(rows), rows, sheet);
    const paint = both?.paints.reduce((all, { ml }) => all + ml, 0) ?? 0;
    expect(paint).toBeGreaterThanOrEqual(1.5 * 0.25 * (0.75 * 1 + 0.25 * 6));
    expect(loadOf(both?.concentration ?? 0)).toBeCloseTo(6, 0);
    const large = puddleAmount(planOf(rows), rows, { widthMm: 1000, heightMm: 1000 })?.ml ?? 0;
    expect(large / (both?.ml ?? 1)).toBeGreaterThan(2.5);
    expect(large / (both?.ml ?? 1)).toBeLessThan(5);
  });

  test('lighter parts take less paint; where only they are painted it is mixed for them', () => {
    const weaker = {
      bands: [1],
      load: 1,
      consistency: 'tea',
      target: null,
      expected: paler,
    } as const;
    const [even, thin] = [row('a', 1, 6), row('a', 1, 6, { weaker })];
    const [one, two] = [even, thin].map(
      (mix) => puddleAmount(planOf([mix]), [mix], sheet)?.ml ?? 0,
    );
    expect(two).toBeLessThan(0.6 * (one ?? 0));
    const light = puddleAmount(planOf([thin], [wash({ slots: [0] })]), [thin], sheet);
    expect(loadOf(light?.concentration ?? 0)).toBeCloseTo(1, 1);
  });

  test('a fluid puddle is never too small to load a brush; thick paint may be', () => {
    const small = { widthMm: 30, heightMm: 30 };
    const [thin, thick] = [2, 15].map((load) => {
      const mix = row('a', 1, load);
      return puddleAmount(planOf([mix]), [mix], small);
    });
    expect(thin?.ml).toBeGreaterThanOrEqual(2.5);
    expect(thick?.ml).toBeLessThan(0.5);
  });

  test('of little tea a small puddle of coffee is mixed and thinned', () => {
    const mix = row('a', 1, 0.2);
    const amount = puddleAmount(planOf([mix]), [mix], { widthMm: 50, heightMm: 50 });
    expect(amount?.ml).toBeLessThan(5);
    const concentration = amount?.concentration ?? 0;
    expect(concentration).toBeCloseTo(0.03, 2);
    expect(thinningFor(concentration, 0.2)?.water).toBeGreaterThan(8);
  });

  test('more than paint with water can leave: straight from the tube', () => {
    const mix = row('a', 1, 30);
    const amount = puddleAmount(planOf([mix]), [mix], sheet);
    expect(amount).toMatchObject({ waterMl: 0, concentration: Number.POSITIVE_INFINITY });
    expect(amount && amountInWords(amount, (id) => id)).toMatch(
      /^Straight from the tube, no water: [\d.]+ cm of blue, [\d.]+ cm of brown\.$/,
    );
  });

  test('no wash takes it: nothing', () => {
    const a = row('a', 1, 3.5);
    expect(puddleAmount(planOf([a], []), [a], sheet)).toBeNull();
    expect(puddleAmount(planOf([a], [wash({ slots: [] })]), [a], sheet)).toBeNull();
    expect(puddleAmount(planOf([]), [], sheet)).toBeNull();
  });
});

test.each([
  [7.5, 120, 40, 'About 11 ml: 1½ teaspoons of water, 12 cm of blue, 4 cm of brown.'],
  [
    3.75,
    15,
    5,
    'About 4 ml: three quarters of a teaspoon of water, 1.5 cm of blue, 5 mm of brown.',
  ],
  [0.65, 3, 1, 'Under 1 ml: 13 drops of water, 3 mm of blue, 1 mm of brown.'],
  [0.05, 12, 4, 'Under 1 ml: 1 drop of water, 12 mm of blue, 4 mm of brown.'],
  [5, 9, 3, 'About 5 ml: 1 teaspoon of water, 9 mm of blue, 3 mm of brown.'],
  [17.5, 6, 2, 'About 18 ml: 3½ teaspoons of water, 6 mm of blue, 2 mm of brown.'],
  [22.5, 6, 2, 'About 23 ml: 1½ tablespoons of water, 6 mm of blue, 2 mm of brown.'],
  [15, 6, 2, 'About 15 ml: 1 tablespoon of water, 6 mm of blue, 2 mm of brown.'],
  [33.75, 30, 10, 'About 35 ml: 2¼ tablespoons of water, 3 cm of blue, 1 cm of brown.'],
])('%s ml of water, %s mm and %s mm in words', (waterMl, blue, brown, words) => {
  const paints = [
    { paint: 'blue', ml: 0.02 * blue, mm: blue },
    { paint: 'brown', ml: 0.02 * brown, mm: brown },
  ];
  const paintMl = 0.02 * (blue + brown);
  const amount = { ml: waterMl + paintMl, waterMl, concentration: paintMl / waterMl, paints };
  expect(amountInWords(amount, (id) => id)).toBe(words);
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
  const besides = rows.find(({ name }) => name === 'Also')?.things.join();
  expect(besides).toMatch(/clean water.*masking fluid/);
  expect(besides).not.toMatch(/opaque white/);
  expect(listMaterials({ ...plan, steps: [] }).map(({ name }) => name)).toEqual(['Paints', 'Also']);
});
