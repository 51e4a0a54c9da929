import { expect, test } from 'vitest';
import { labOfRgb, rgbOfLab } from '../../../../app/core/colour/lab.ts';
import {
  coloursWhileWet,
  lookWhileWet,
  mapLook,
} from '../../../../app/core/plan/colours-while-wet.ts';
import type { Mix, Step } from '../../../../app/core/plan/plan.ts';
import type { Slot } from '../../../../app/core/reading/slot.ts';

const slots = [
  { passage: 'sheet', band: 1, family: 1 },
  { passage: 'sheet', band: 2, family: 1 },
  { passage: 'sheet', band: 2, family: 2 },
  { passage: 'ground', band: 2, family: 1 },
] as readonly Partial<Slot>[] as readonly Slot[];
/** Made colours, own figures of this test: at full strength wet paint is 8 darker, 3 and 5 stronger; thin 3, 2, 3. */
const mix = {
  id: 'sheet/1/1',
  passage: 'sheet',
  family: 1,
  expected: [60, 10, 20],
  expectedWet: [52, 13, 25],
  weaker: { bands: [1], expected: [80, 4, 6], expectedWet: [77, 6, 9] },
} as unknown as Mix;
const step = (changed: Partial<Step> = {}) =>
  ({
    kind: 'wash',
    slots: [0, 1, 2],
    mixes: ['sheet/1/1'],
    after: [
      [78, 4, 6],
      [58, 10, 20],
      [50, 0, 0],
      [40, 0, 0],
    ],
    ...changed,
  }) as unknown as Step;

test('wet, a shape looks other than dry by what its mix does, at the strength it has there', () => {
  const plan = { slots, mixes: [mix] };
  expect(coloursWhileWet(plan, step())).toEqual([
    [75, 6, 9],
    [50, 13, 25],
    [50, 0, 0], // another colour's
    [40, 0, 0], // not gone over
  ]);
  expect(coloursWhileWet(plan, step({ slots: [3] }))).toEqual(step().after); // of another passage
  expect(coloursWhileWet(plan, step({ kind: 'lift' }))).toEqual(step().after);
  expect(coloursWhileWet(plan, step({ mixes: [] }))).toEqual(step().after);
  // A plan from before thin strengths told their wet colour.
  const { expectedWet: _, ...weaker } = mix.weaker as NonNullable<Mix['weaker']>;
  const former = { slots, mixes: [{ ...mix, weaker } as unknown as Mix] };
  expect(coloursWhileWet(former, step())[0]).toEqual([70, 7, 11]);
});

test('nothing gets darker than black', () => {
  const [first] = coloursWhileWet({ slots, mixes: [mix] }, step({ after: [[2, 0, 0]] }));
  expect(first).toEqual([0, 2, 3]);
});

test('the look by squares moves as its slot does; rows of shapes that stay dry stay', () => {
  const rows = [1, 0, 3, 1];
  const look = Uint8ClampedArray.from(
    [
      [58, 10, 20],
      [78, 4, 6],
      [40, 0, 0],
      [64, 0, 10],
    ].flatMap((lab) => [...rgbOfLab(lab as [number, number, number])]),
  );
  const wet = lookWhileWet({ slots, mixes: [mix] }, step({ look } as Partial<Step>), rows);
  expect(wet.after[1]).toEqual([50, 13, 25]);
  const labs = rows.map((_, n) => {
    const [red = 0, green = 0, blue = 0] = wet.look?.subarray(3 * n, 3 * n + 3) ?? [];
    return labOfRgb([red, green, blue]);
  });
  const wanted = [
    [50, 13, 25],
    [75, 6, 9],
    [40, 0, 0],
    [56, 3, 15],
  ];
  for (const [n, lab] of labs.entries())
    for (const [c, own] of lab.entries())
      expect(Math.abs(own - (wanted[n]?.[c] ?? 0)), `${n} ${c}`).toBeLessThan(1);
  expect([...(wet.look ?? [])].slice(6, 9)).toEqual([...look.slice(6, 9)]);
  expect(lookWhileWet({ slots, mixes: [mix] }, step(), rows)).not.toHaveProperty('look');
  expect(mapLook(step({ look } as Partial<Step>), undefined, (lab) => lab)).not.toHaveProperty(
    'look',
  );
});
