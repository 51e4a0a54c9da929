import { expect, it } from 'vitest';
import {
  canBeSplit,
  movedEarlier,
  movedLater,
  nextWash,
} from '../../../../../app/core/plan/edits/possible-edits.ts';
import type { Step, StepKind } from '../../../../../app/core/plan/plan.ts';
import type { Slot } from '../../../../../app/core/reading/slot.ts';

const steps = [
  'prepare/x',
  'wash/1',
  'dry/1',
  'wash/2',
  'dry/2',
  'dry/sheet/add-a',
  'last-look/x',
].map((key) => ({ key, kind: key.split('/')[0] as StepKind }));

it.each([
  ['prepare/x', undefined, 'wash/1'],
  ['wash/1', null, 'wash/2'],
  ['wash/2', 'prepare/x', 'dry/sheet/add-a'],
  ['dry/sheet/add-a', 'wash/1', 'last-look/x'],
  ['last-look/x', 'wash/2', undefined],
  // A drying check goes with its wash.
  ['dry/1', undefined, undefined],
])('%s goes after %s, or after %s', (key, earlier, later) => {
  const moved = (after: string | null | undefined) =>
    after === undefined ? null : { kind: 'move', key, after };
  expect(movedEarlier(steps, key)).toEqual(moved(earlier));
  expect(movedLater(steps, key)).toEqual(moved(later));
});

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
