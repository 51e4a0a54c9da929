import { expect, it } from 'vitest';
import { usualPaper } from '../../../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../../../app/core/drying/weather.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import type { Step, WashPlan } from '../../../../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../../../../app/core/plan/plan-memory.ts';
import { reckonDrying } from '../../../../../app/core/session/drying-clock.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { few } from '../../../../support/plan/solved.ts';

const hues = [
  [-10, 20],
  [2, -18],
] as const;
const small = tableOf([97, 74, 52, 28], hues).map((slot) =>
  slot.band === 1 ? { ...slot, shapes: 12, smallShapes: 9 } : slot,
);
const soft = [2, 3].map((b) => ({ a: b - 2, b, lengthMm: 300, soft: 0.9 }));
const blown = { ...roomWeather, hairDryer: true };
const memory = createPlanMemory();
const planOf = (isSoft: boolean, wishes: object): Promise<WashPlan> =>
  buildPlan(
    madeReading(small, isSoft ? soft : []),
    { box: few, chosen: few, washes: 2, ...wishes },
    noCheckpoint,
    memory,
  );
const washesOf = (plan: WashPlan): Step[] => plan.steps.filter(({ kind }) => kind === 'wash');
const dries = (steps: readonly Step[]): number[] => steps.map(({ dryMinutes }) => dryMinutes[1]);

it('a hair dryer shortens the drying, but under masking fluid only once the mask is off (R12)', async () => {
  const [air, dryer] = [await planOf(false, {}), await planOf(false, { weather: blown })];
  for (const [i, minutes] of dries(washesOf(dryer)).entries()) {
    expect(minutes).toBeLessThan(0.7 * (dries(washesOf(air))[i] ?? 0));
  }
  const [masked, blownMask] = [await planOf(true, {}), await planOf(true, { weather: blown })];
  expect(masked.steps.some(({ kind }) => kind === 'mask')).toBe(true);
  expect(dries(washesOf(blownMask))).toEqual(dries(washesOf(masked)));
  const accents = (plan: WashPlan) => dries(plan.steps.filter(({ kind }) => kind === 'accents'));
  expect(accents(blownMask)[0]).toBeLessThan(accents(masked)[0] ?? 0);
});

it('a hair dryer asks for time to let the sheet cool before every touch (R14)', async () => {
  const cooling = async (wishes: object) =>
    (await planOf(false, wishes)).steps.find(({ kind }) => kind === 'dry')?.paintMinutes;
  expect(await cooling({})).toEqual([1, 2]);
  expect(await cooling({ weather: blown })).toEqual([3, 5]);
});

it('a wash with less water is reckoned to dry sooner at the easel too', async () => {
  const plan = await planOf(false, { evening: 20 });
  const [wash] = washesOf(plan);
  if (!wash) throw new Error('no wash');
  expect(wash.waterGramsPerSquareMetre).toBe(40);
  const now = { weather: roomWeather, paper: usualPaper, lessons: [] };
  const { waterGramsPerSquareMetre: _, ...usual } = wash;
  const less = reckonDrying(wash, now);
  expect(less.dryMinutes[1]).toBeLessThan(reckonDrying(usual, now).dryMinutes[1]);
  expect(Math.abs(less.dryMinutes[1] - wash.dryMinutes[1])).toBeLessThan(1);
});
