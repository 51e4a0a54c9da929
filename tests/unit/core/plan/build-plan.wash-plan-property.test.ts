import fc from 'fast-check';
import { expect, it } from 'vitest';
import { passagesChoices } from '../../../../app/core/decisions/plan-edit.ts';
import { noCheckpoint } from '../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { describeBrokenRules } from '../../../../app/core/plan/rules/check-rules.ts';
import { runs } from '../../../support/more-runs.ts';
import { anyReading } from '../../../support/plan/any-reading.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

// A small box keeps each plan to some tens of milliseconds.
const box = [
  'py74-arylide-yellow',
  'pr122-quinacridone-magenta',
  'pb29-ultramarine-blue',
  'pb27-prussian-blue',
  'pbr7-burnt-sienna',
  'pg17-chromium-oxide',
];

it('any reading gives a sound plan or one honest warning, the same each time', async () => {
  await fc.assert(
    fc.asyncProperty(
      anyReading,
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 4 }),
      fc.constantFrom(undefined, ...passagesChoices),
      async ({ slots, borders }, washes, puddlesPerWash, passages) => {
        const made = madeReading(slots, borders);
        const wishes = {
          box,
          paletteSize: 3,
          washes,
          puddlesPerWash,
          ...(passages && { passages }),
        };
        const plan = await buildPlan(made, wishes, noCheckpoint);
        expect(describeBrokenRules(plan, { washes, puddlesPerWash })).toEqual([]);
        expect(JSON.stringify(plan)).not.toMatch(/null,null|NaN|Infinity/);
        expect(plan.steps.length > 0 || plan.warnings.length === 1).toBe(true);
        if (slots.length % 3 !== 0) return; // for some: it takes as long as all the rest
        const again = await buildPlan(made, wishes, noCheckpoint);
        expect(again).toEqual(plan);
      },
    ),
    runs(10, 11),
  );
});

const oneTone = (lightness: number) => madeReading(tableOf([lightness], [[0, 0]]));
const many = (bands: number, families: number) =>
  madeReading(
    tableOf(
      Array.from({ length: bands }, (_, i) => 92 - (i * 70) / bands),
      Array.from({ length: families }, (_, i) => [30 * Math.cos(i), 30 * Math.sin(i)] as const),
    ),
  );

it.each([
  ['all black', oneTone(0)],
  ['all white', oneTone(100)],
  ['all grey', oneTone(50)],
  ['two bands, one family', many(2, 1)],
  ['seven bands, one family', many(7, 1)],
  ['two bands, six families', many(2, 6)],
  ['seven bands, six families', many(7, 6)],
])('%s gives a plan or a warning (A-NUM-1)', async (_, made) => {
  const plan = await buildPlan(made, { box }, noCheckpoint);
  // Seven values want a fourth wash, and the usual paper bears it.
  expect(describeBrokenRules(plan, { washes: 4, puddlesPerWash: 3 })).toEqual([]);
  expect(plan.steps.length > 0 || plan.warnings.length === 1).toBe(true);
  for (const step of plan.steps) {
    expect(step.after.flat().every(Number.isFinite)).toBe(true);
  }
});

it('lays one wash after another, never more than the paper bears', async () => {
  for (const washes of [1, 2, 3, 8]) {
    const plan = await buildPlan(many(5, 1), { box, washes }, noCheckpoint);
    const count = plan.steps.filter((step) => step.kind === 'wash').length;
    expect(count).toBeLessThanOrEqual(washes);
    expect(describeBrokenRules(plan, { washes, puddlesPerWash: 3 })).toEqual([]);
  }
});
