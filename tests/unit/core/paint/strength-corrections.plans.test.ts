import { expect, it } from 'vitest';
import { strengthOf } from '../../../../app/core/paint/paint.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../../app/core/plan/plan-memory.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

const blue = 'pb29-ultramarine-blue';
const chosen = ['py74-arylide-yellow', blue, 'pbr7-burnt-sienna'];

/** Tube paint of one paint in all mixes together, ml/m2. */
const used = ({ mixes }: WashPlan, paint: string): number =>
  mixes.reduce((sum, { parts, load }) => {
    const whole = parts.reduce((all, part) => all + part.parts, 0);
    return sum + (load * (parts.find((part) => part.paint === paint)?.parts ?? 0)) / (whole || 1);
  }, 0);

it('a plan made with a stronger blue asks for less of it and keeps the strength it was made with', async () => {
  const reading = madeReading(
    tableOf(
      [94, 72, 50],
      [
        [4, 30],
        [-2, -26],
      ],
    ),
  );
  // One memory for all: what is remembered of the one must not come back for the other.
  const memory = createPlanMemory();
  const planned = (factor: number) => {
    const strengths = factor === 1 ? [] : [{ paint: blue, factor }];
    return buildPlan(reading, { chosen, strengths }, async () => {}, memory);
  };
  const plain = await planned(1);
  const corrected = await planned(1.5625);
  const strength = ({ optics }: WashPlan): number =>
    strengthOf(optics.find(({ id }) => id === blue) ?? {});
  expect(strength(corrected)).toBeCloseTo(1.5625 * strength(plain), 9);
  expect(used(corrected, blue)).toBeLessThan(0.85 * used(plain, blue));
  expect((await planned(1)).mixes).toEqual(plain.mixes);
  for (const mix of corrected.mixes)
    for (const part of mix.parts) expect(part.parts).toBe(Math.round(part.parts));
});
