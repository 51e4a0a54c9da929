import { expect, test, vi } from 'vitest';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import { createOwnBox } from '../../../../app/state/paints/own-box.ts';
import { faultOf } from '../../../support/state/made-store.ts';

async function boxWith() {
  const paintBox = vi.fn(async () => []);
  const renewBox = vi.fn();
  let kept: unknown = emptyBox;
  const keepSetting = vi.fn(async (value: unknown) => {
    kept = value;
  });
  const state = createOwnBox(
    {
      setting: async () => kept,
      changeSetting: async (_name, how) => {
        const value = how(kept);
        await keepSetting(value);
        return value;
      },
    },
    { paintBox, renewBox },
  );
  await state.ready;
  return { state, paintBox, keepSetting };
}

test('cards are worked out when first asked for, and again only when a paint comes or goes', async () => {
  const { state, paintBox } = await boxWith();
  await state.change((before) => ({ ...before, owned: [] }));
  expect(paintBox).not.toHaveBeenCalled();
  await state.open();
  await state.open();
  expect(paintBox).toHaveBeenCalledTimes(1);
  await state.change((before) => ({ ...before, owned: ['pbr7-burnt-sienna'] }));
  expect(paintBox).toHaveBeenCalledTimes(1); // a tick makes no new card
  await state.change((before) => ({ ...before, gone: ['own-1'] }));
  expect(paintBox).toHaveBeenCalledTimes(2);
  await state.change((before) => ({ ...before, paints: [] }));
  expect(paintBox).toHaveBeenCalledTimes(3);
});

test('what fails is said, and tried again when next asked for', async () => {
  const { state, paintBox, keepSetting } = await boxWith();
  paintBox.mockRejectedValueOnce(faultOf('AnalysisError', 'It stopped.'));
  await state.open();
  expect(state.problem.value).toBe('It stopped.');
  await state.open();
  expect(paintBox).toHaveBeenCalledTimes(2);
  keepSetting.mockRejectedValueOnce(faultOf('StorageError', 'No room.'));
  await state.change((before) => ({ ...before, owned: [] }));
  expect([state.problem.value, state.box.value.owned]).toEqual(['No room.', []]);
  await state.change((before) => ({ ...before, owned: null }));
  expect(state.problem.value).toBeNull();
});
