import { expect, it } from 'vitest';
import type { Slot } from '../../../../app/model/slot.ts';
import { canBeSplit, nextWash } from '../../../../app/model/wash-goes.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';

const slots = [1, 1, 2].map((band) => ({ band }) as Slot);
const step = (n: number, key: string, families: number[] = [1], own: number[] = [0]): Step =>
  ({ n, key, kind: key.split('/')[0], families, slots: own }) as unknown as Step;

it('several colours or several values can be parted', () => {
  const plan = { slots, steps: [] };
  expect(canBeSplit(plan, step(1, 'wash/sheet/1', [1, 2]))).toBe(true);
  expect(canBeSplit(plan, step(1, 'wash/sheet/1', [1], [0, 2]))).toBe(true);
  expect(canBeSplit(plan, step(1, 'wash/sheet/1', [1], [0, 1]))).toBe(false);
  expect(canBeSplit(plan, step(1, 'accents/sheet/0', [1, 2]))).toBe(false);
  const goes = [step(1, 'wash/sheet/1', [1, 2]), step(2, 'wash/sheet/1/b', [3, 4])] as const;
  expect(goes.map((go) => canBeSplit({ slots, steps: goes }, go))).toEqual([false, true]);
});

it('the next wash is that of the same passage', () => {
  const steps = [step(1, 'wash/ground/1'), step(2, 'wash/subject/1'), step(3, 'wash/ground/2')];
  const keyAfter = (n: number) => nextWash({ steps }, steps[n] as Step)?.key;
  expect(keyAfter(0)).toBe('wash/ground/2');
  expect(keyAfter(1)).toBeUndefined();
});
