import { expect, test } from 'vitest';
import { familyNameIn } from '../../../../app/core/plan/family-name-in.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

const reading = madeReading(
  tableOf(
    [80, 40],
    [
      [-14, 26],
      [2, -24],
    ],
  ),
);
const paletteOf = (count: number) =>
  ({ palette: Array.from({ length: count }, () => ({})) }) as unknown as WashPlan;

test('families go by their colours in the photo; painted with one paint they are just shapes', () => {
  const [first, second] = reading.families as unknown as readonly [
    { id: number; name: string },
    { id: number; name: string },
  ];
  expect(first.name).not.toBe(second.name);
  for (const count of [2, 3, 5]) {
    const name = familyNameIn(paletteOf(count), reading);
    expect([name(first.id), name(second.id)]).toEqual([first.name, second.name]);
    expect(name(99)).toBe('shapes');
  }
  const alone = familyNameIn(paletteOf(1), reading);
  expect([alone(first.id), alone(second.id)]).toEqual(['shapes', 'shapes']);
});
