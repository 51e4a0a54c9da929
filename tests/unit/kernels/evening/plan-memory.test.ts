import { expect, it } from 'vitest';
import type { PlanWishes } from '../../../../app/model/plan-wishes.ts';
import { LastAnswers } from '../../../../workers/kernels/last-answers.ts';
import { buildWashPlan } from '../../../../workers/kernels/plan/build-wash-plan.ts';
import { createPlanMemory } from '../../../../workers/kernels/plan/plan-memory.ts';
import { madeReading, tableOf } from '../paint/made-reading.ts';
import { chosen } from './solved.ts';

const reading = madeReading(tableOf([97, 74, 52, 28], [[2, -18]]));

/** Counts what is worked out step by step: searches and solves. */
async function planned(wishes: PlanWishes, memory = createPlanMemory()) {
  let pauses = 0;
  const plan = await buildWashPlan(
    reading,
    { box: chosen, paletteSize: 3, ...wishes },
    async () => {
      pauses++;
    },
    memory,
  );
  return { plan, pauses };
}

it('a plan made from memory is the same, and nothing is searched or solved for it', async () => {
  const memory = createPlanMemory();
  const first = await planned({ washes: 2 }, memory);
  expect(first.pauses).toBeGreaterThan(5);
  for (const wishes of [{ washes: 2 }, { washes: 2, evening: 600 }, { washes: 2, evening: 200 }]) {
    const again = await planned(wishes, memory);
    expect(again.pauses).toBeLessThan(2);
    expect(again.plan).toEqual((await planned(wishes)).plan);
  }
});

it('another number of washes, other paints or another picture are worked out anew', async () => {
  const memory = createPlanMemory();
  await planned({ washes: 2 }, memory);
  const three = await planned({ washes: 3 }, memory);
  expect(three.plan).toEqual((await planned({ washes: 3 })).plan);
  const [fewer, ...rest] = chosen;
  const without = await planned({ washes: 2, exclude: [fewer ?? ''] }, memory);
  expect(without.plan.palette.map(({ id }) => id).every((id) => rest.includes(id))).toBe(true);
});

it('keeps the last answers only, those asked for again longest', () => {
  const answers = new LastAnswers<number>(2);
  answers.keep('one', 1);
  answers.keep('two', 2);
  expect(answers.get('one')).toBe(1);
  answers.keep('three', 3);
  expect([answers.get('one'), answers.get('two'), answers.get('three')]).toEqual([1, undefined, 3]);
});
