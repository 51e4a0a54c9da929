import { expect, it } from 'vitest';
import { movedEarlier, movedLater } from '../../../../app/model/step-moves.ts';
import type { StepKind } from '../../../../app/model/wash-plan.ts';

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
