import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import { openStore } from '../../../app/storage/open-store.ts';
import { MIGRATIONS } from '../../../app/storage/schema.ts';
import type { StorageProblem } from '../../../app/storage/storage-problem.ts';

const newer = [...MIGRATIONS, () => undefined];

/** The connections the store itself opens, so that they can be closed under it. */
function catchConnections(): IDBDatabase[] {
  const caught: IDBDatabase[] = [];
  const plain = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...args) {
    const request = plain.apply(this, args);
    request.addEventListener('success', () => caught.push(request.result));
    return request;
  };
  return caught;
}

test('a connection closed under the app is opened once more and the write repeated', async () => {
  const connections = catchConnections();
  const store = await openStore({ name: 'cut' });
  await store.keepSetting('a', 1);
  connections.at(-1)?.close();
  await store.keepSetting('a', 2);
  expect(await store.setting('a')).toBe(2);
  expect(connections).toHaveLength(2);
  expect(store.saving.value).toBe('saved');
  connections.at(-1)?.close();
  const both = await Promise.all([store.setting('a'), store.keepSetting('b', 3)]);
  expect(both[0]).toBe(2);
  expect(connections).toHaveLength(3);
  store.close();
});

test('another window with an older version is waited for, and said', async () => {
  const old = await openDB('blocked', 1, {
    upgrade: (db) => void MIGRATIONS[0]?.(db, null as never),
  });
  const heard: (StorageProblem | null)[] = [];
  const opening = openStore({
    name: 'blocked',
    migrations: newer,
    onTrouble: (t) => heard.push(t),
  });
  await expect.poll(() => heard.at(-1)?.kind).toBe('blocked');
  expect(heard.at(-1)?.message).toContain('Close the other window');
  old.close();
  const store = await opening;
  expect(heard.at(-1)).toBeNull();
  expect(store.trouble.value).toBeNull();
  await store.keepSetting('a', 1);
  store.close();
});

test('an old window lets the newer version in and saves nothing into the void', async () => {
  const old = await openStore({ name: 'outdated' });
  const next = await openStore({ name: 'outdated', migrations: newer });
  expect(old.trouble.value?.kind).toBe('outdated');
  await expect(old.keepSetting('a', 1)).rejects.toMatchObject({ kind: 'outdated' });
  expect(old.saving.value).toBe('failed');
  await next.keepSetting('a', 2);
  expect(await next.setting('a')).toBe(2);
  next.close();
});

test('everything cleared under the app: it says so and goes on keeping', async () => {
  const store = await openStore({ name: 'cleared' });
  await store.keepSetting('a', 1);
  await new Promise((done) => {
    indexedDB.deleteDatabase('cleared').onsuccess = done;
  });
  await expect.poll(() => store.trouble.value?.kind).toBe('gone'); // before she relies on it
  await store.keepSetting('b', 2);
  expect(store.trouble.value?.kind).toBe('gone');
  expect(await store.setting('a')).toBeNull();
  expect(await store.setting('b')).toBe(2);
  store.close();
});
