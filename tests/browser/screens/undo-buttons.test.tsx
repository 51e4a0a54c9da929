import { expect, test } from 'vitest';
import { page } from 'vitest/browser';
import type { Decision } from '../../../app/core/decisions/painting.ts';
import { UndoButtons } from '../../../app/ui/controls/undo-buttons.tsx';
import { shown } from './shown.ts';

test('redo stands beside undo, and each is there only while it has something to do', async () => {
  let decisions: Decision[] = [{ id: 'a', at: 1, kind: 'bands', count: 4 }];
  const buttons = () => (
    <UndoButtons
      decisions={decisions}
      kinds={['bands']}
      onDecide={(made) => {
        const next = { ...made, id: `d${decisions.length}`, at: 2 } as Decision;
        decisions = [...decisions, next];
        screen.again(buttons());
      }}
    />
  );
  const screen = shown(buttons());
  const undo = page.getByRole('button', { name: 'Undo' });
  const redo = page.getByRole('button', { name: 'Redo' });
  await expect.element(redo).toBeDisabled();
  await undo.click();
  await expect.element(undo).toBeDisabled();
  await redo.click();
  await expect.element(undo).toBeEnabled();
  await expect.element(redo).toBeDisabled();
  expect(decisions.map(({ undoes }) => undoes)).toEqual([undefined, 'a', 'd1']);
  screen.leave();
});
