import { expect, test } from 'vitest';
import { createSettings } from '../../../app/storage/settings.ts';
import type { Transactions } from '../../../app/storage/transactions.ts';

test('one let go while it is on its way waits no more, though it fails then', async () => {
  const failing: ((fault: DOMException) => void)[] = [];
  const transactions = {
    write: (what: string) =>
      what === 'setting note'
        ? new Promise((_, fail) => void failing.push(fail))
        : Promise.resolve(undefined),
  } as unknown as Transactions;
  const noRoom = (): DOMException => new DOMException('made to fail', 'QuotaExceededError');
  const { settings, letGo } = createSettings({ transactions, retryMs: 1e6 });
  const first = settings.keepSetting('note', 'Less green');
  failing[0]?.(noRoom());
  await expect(first).rejects.toMatchObject({ kind: 'no-room' });
  expect([...settings.unkeptSettings.value.keys()]).toEqual(['note']);
  // Set again, or tried again, as its painting goes.
  const second = settings.keepSetting('note', 'Less green');
  letGo(['note']);
  failing[1]?.(noRoom());
  await expect(second).rejects.toMatchObject({ kind: 'no-room' });
  expect([...settings.unkeptSettings.value.keys()]).toEqual([]);
});
