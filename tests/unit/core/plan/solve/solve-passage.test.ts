import { expect, it } from 'vitest';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import { planQuality } from '../../../../../app/core/plan/reach/plan-quality.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

/** Seven paints: what is searched does not matter here. */
const someOfTheBox = paintBox.filter((_, n) => n % 17 === 0).map(({ id }) => id);

it('shares puddles among six families by least loss', async () => {
  const hues = [
    [-20, 25],
    [-10, -15],
    [5, -28],
    [18, 16],
    [6, 34],
    [0, 2],
  ] as const;
  const plan = await buildPlan(
    madeReading(tableOf([95, 70, 45], hues)),
    { box: someOfTheBox },
    noCheckpoint,
  );
  const one = await buildPlan(
    madeReading(tableOf([95, 70, 45], hues)),
    { puddlesPerWash: 6, box: someOfTheBox },
    noCheckpoint,
  );
  const few = planQuality(plan.slots, plan.steps.at(-1)?.after ?? []);
  const many = planQuality(one.slots, one.steps.at(-1)?.after ?? []);
  expect(many.colour).toBeLessThanOrEqual(few.colour + 0.3);
  expect(few.lightness).toBeLessThanOrEqual(1.5);
});
