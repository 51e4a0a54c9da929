import { signal } from '@preact/signals';
import { expect, test, vi } from 'vitest';
import { createStoragePromise } from '../../../app/state/storage-promise.ts';

test('asked once, when the first painting has its plan', async () => {
  const planned = signal<object | null>(null);
  const storage = { persisted: vi.fn(async () => false), persist: vi.fn(async () => true) };
  const { promised } = createStoragePromise({ storage, planned });
  expect(promised.value).toBeNull();
  await expect.poll(() => promised.value).toBe(false);
  expect(storage.persist).not.toHaveBeenCalled();
  planned.value = {};
  await expect.poll(() => promised.value).toBe(true);
  planned.value = {};
  expect(storage.persist).toHaveBeenCalledTimes(1);
});

test('promised long ago it is not asked for again', async () => {
  const planned = signal<object | null>(null);
  const storage = { persisted: async () => true, persist: vi.fn(async () => false) };
  const { promised } = createStoragePromise({ storage, planned });
  await expect.poll(() => promised.value).toBe(true);
  planned.value = {};
  expect(storage.persist).not.toHaveBeenCalled();
});

test('a browser that refuses to answer has promised nothing; one that can’t be asked is not spoken of', async () => {
  const no = () => Promise.reject(new TypeError('not here'));
  const refusing = createStoragePromise({
    storage: { persisted: no, persist: no },
    planned: signal({}),
  });
  await expect.poll(() => refusing.promised.value).toBe(false);
  const old = createStoragePromise({ storage: undefined, planned: signal({}) });
  await Promise.resolve();
  expect(old.promised.value).toBeNull();
});
