import { expect, test } from 'vitest';
import { butterFrom, creamFrom } from '../../../../../app/core/paint/consistency.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../../../app/core/plan/plan.ts';
import { builtPlans, readings } from '../../../../support/plan/built-plans.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';

/** Loads that break the rule, with why: first wash milk at most, cream for what is over 20 cm2, butter for accents. */
function tooThick({ mixes, steps, slots }: WashPlan): string[] {
  return mixes.flatMap(({ id, passage, wash, family, load, weaker }) => {
    const step = steps.find(({ key }) => key === `wash/${passage}/${wash}`);
    const covered = (step?.slots ?? []).filter((i) => slots[i]?.family === family);
    const largestCm2 = Math.max(0, ...covered.map((i) => (slots[i]?.largestMm2 ?? 0) / 100));
    return [load, weaker?.load ?? 0].flatMap((each) => {
      if (wash === 1 && each >= creamFrom) return [`${id}: ${each} in a first wash`];
      if (largestCm2 > 20 && each >= butterFrom) return [`${id}: ${each} on ${largestCm2} cm2`];
      return [];
    });
  });
}

/** Painted slots that end more than 5 L* from their value. */
function missed({ slots, steps }: WashPlan): number {
  const last = steps.at(-1)?.after ?? [];
  return slots.filter(
    ({ reserve, share, target }, i) =>
      !reserve && share > 0 && Math.abs((last[i]?.[0] ?? target[0]) - target[0]) > 5,
  ).length;
}

const saysSo = ({ warnings }: WashPlan): boolean =>
  warnings.some(({ code }) => code === 'dark-out-of-reach' || code === 'shape-out-of-reach');

test.each(Object.entries(builtPlans))(
  'no wash is thicker than it may be, and what is missed is said: %s',
  async (_, built) => {
    const plan = await built();
    expect(plan.mixes.some(({ load }) => load > 0)).toBe(true);
    expect(tooThick(plan)).toEqual([]);
    if (missed(plan) > 0) expect(saysSo(plan)).toBe(true);
  },
);

test('one wash of thin paint for a deep dark: it stays milk, and the plan says what is out of reach', async () => {
  const dark = madeReading(tableOf([95, 18], [[2, -10]]));
  const plan = await buildPlan(
    dark,
    { washes: 1, chosen: ['py43-yellow-ochre', 'pb28-cobalt-blue'] },
    noCheckpoint,
  );
  expect(tooThick(plan)).toEqual([]);
  expect(missed(plan)).toBeGreaterThan(0);
  expect(saysSo(plan)).toBe(true);
});

test('more washes take such a dark further', async () => {
  const { 'low key': reading } = readings;
  const chosen = ['pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
  const darkest = async (washes: number): Promise<number> => {
    const plan = await buildPlan(reading, { washes, chosen }, noCheckpoint);
    return Math.min(...(plan.steps.at(-1)?.after ?? []).map(([l]) => l));
  };
  expect(await darkest(3)).toBeLessThan((await darkest(1)) - 3);
});
