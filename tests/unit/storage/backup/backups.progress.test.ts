import { expect, test } from 'vitest';
import { openStore } from '../../../../app/storage/open-store.ts';
import { copyOf, fillStore } from '../../../support/storage/made-backup.ts';

test('how far it is: of two paintings a half after the first, all after the second', async () => {
  const store = await openStore({ name: 'backups progress', readTimeMs: () => 7000 });
  await fillStore(store);
  const signal = new AbortController().signal;
  const [written, checked, restored]: number[][] = [[], [], []];
  const copy = await copyOf(store, { onPart: (part) => written?.push(part) });
  const backups = await store.backups();
  const found = await backups.check(signal, copy, (part) => checked?.push(part));
  await backups.restore(signal, found, 'replace', (part) => restored?.push(part));
  expect([written, checked, restored]).toEqual([
    [1 / 2, 1],
    [1 / 2, 1],
    [1 / 2, 1],
  ]);
});
