import 'fake-indexeddb/auto';
import { effect } from '@preact/signals';
import { afterEach, expect, test } from 'vitest';
import { openStore } from '../../../app/storage/open-store.ts';
import { keepsakeNames } from '../../../app/storage/sessions.ts';
import { failPuts } from '../../support/storage/failing-put.ts';
import { newPlanSample, paintingSample, photoSample } from '../../support/storage/kept-samples.ts';
import { bringBack, copyOf } from '../../support/storage/made-backup.ts';

let made = 0;
let end = (): void => {};
afterEach(() => end());

/** `again` reads what is in the database, past what a window remembers. */
async function opened(retryMs: number) {
  const name = `settings ${made++}`;
  const store = await openStore({ name, retryMs });
  const again = async (setting: string): Promise<unknown> => {
    const other = await openStore({ name });
    const value = await other.setting(setting);
    other.close();
    return value;
  };
  return { store, name, again };
}

test('one that could not be stored is tried again by itself, and saved is said only then', async () => {
  const { store, again } = await opened(1);
  const words: string[] = [];
  const stop = effect(() => void words.push(store.saving.value));
  end = failPuts('settings', 'QuotaExceededError', 3);
  await expect(store.keepSetting('a', 1)).rejects.toMatchObject({ kind: 'no-room' });
  expect(store.saving.value).toBe('failed');
  await expect.poll(() => store.saving.value).toBe('saved');
  stop();
  expect(await again('a')).toBe(1);
  expect(words.slice(1, -1)).not.toContain('saved');
});

test('what is stored at once is nothing new to those who are told what waits', async () => {
  const { store } = await opened(1e6);
  let told = 0;
  const stop = effect(() => {
    store.unkeptSettings.value;
    told++;
  });
  await store.keepSetting('a', 1);
  await store.keepSetting('a', 2);
  expect(told).toBe(1);
  end = failPuts('settings', 'QuotaExceededError');
  await expect(store.keepSetting('a', 3)).rejects.toThrow();
  stop();
  expect(told).toBe(2);
});

test('meanwhile it counts: it is what is read, and no other is said to wait', async () => {
  const { store, again } = await opened(1e6);
  await store.keepSetting('a', 1);
  end = failPuts('settings', 'QuotaExceededError');
  await expect(store.keepSetting('a', 2)).rejects.toThrow();
  await store.keepSetting('b', 3);
  expect([await store.setting('a'), await again('a')]).toEqual([2, 1]);
  expect([...store.unkeptSettings.value.keys()]).toEqual(['a']);
  await store.keepSetting('a', 4);
  expect([await again('a'), store.unkeptSettings.value.size]).toEqual([4, 0]);
  expect(store.saving.value).toBe('saved');
});

test('the last of several counts, also where only an earlier one could be stored', async () => {
  const { store, again } = await opened(1);
  const put = IDBObjectStore.prototype.put;
  let puts = 0;
  IDBObjectStore.prototype.put = function (...row) {
    puts++;
    if (puts === 2) throw new DOMException('made to fail', 'QuotaExceededError');
    return put.apply(this, row);
  };
  end = () => {
    IDBObjectStore.prototype.put = put;
  };
  const both = await Promise.allSettled([store.keepSetting('a', 2), store.keepSetting('a', 3)]);
  expect(both.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
  expect([store.saving.value, await store.setting('a')]).toEqual(['failed', 3]);
  await expect.poll(() => store.saving.value).toBe('saved');
  expect(await again('a')).toBe(3);
});

test('what could not be taken away is gone for the reader, and goes by itself', async () => {
  const { store, again } = await opened(1);
  await store.keepSetting('a', 1);
  const remove = IDBObjectStore.prototype.delete;
  let left = 2;
  IDBObjectStore.prototype.delete = function (key) {
    if (left-- > 0) throw new DOMException('made to fail', 'QuotaExceededError');
    return remove.call(this, key);
  };
  end = () => {
    IDBObjectStore.prototype.delete = remove;
  };
  await expect(store.forgetSetting('a')).rejects.toThrow();
  expect(await store.setting('a')).toBeNull();
  await expect.poll(() => store.saving.value).toBe('saved');
  expect(await again('a')).toBeNull();
});

test('a figure that is none is never stored: what waited before it is, and it is not tried again', async () => {
  const { store, again } = await opened(1e6);
  end = failPuts('settings', 'QuotaExceededError');
  await expect(store.keepSetting('a', 1)).rejects.toThrow();
  await expect(store.keepSetting('a', Number.NaN)).rejects.toMatchObject({ kind: 'broken-figure' });
  expect([await store.setting('a'), await again('a')]).toEqual([1, null]);
});

test('what belongs to a session is let go where that was discarded in another window', async () => {
  const { store, name } = await opened(1e6);
  await store.addPainting(paintingSample('meadow', 'photo'), photoSample('photo'));
  await store.keepPlan('meadow', newPlanSample('plan'));
  await store.sessionOf('meadow', 's');
  for (const keepsake of keepsakeNames('s')) {
    await store.keepSetting(keepsake, 'first');
    expect(await store.setting(keepsake)).toBe('first');
  }
  const other = await openStore({ name });
  await other.discard('meadow');
  for (const keepsake of keepsakeNames('s')) await store.keepSetting(keepsake, 'late');
  for (const keepsake of keepsakeNames('s')) expect(await other.setting(keepsake)).toBeNull();
  expect(store.saving.value).toBe('saved');
  other.close();
});

test('where a copy of everything replaces what is here, what waited goes with it', async () => {
  const { store, again } = await opened(1e6);
  await store.keepSetting('air and paper', { schema: 1, note: 'of the copy' });
  await store.addPainting(paintingSample('meadow', 'photo'), photoSample('photo'));
  const copy = await copyOf(store);
  end = failPuts('settings', 'QuotaExceededError');
  await expect(store.keepSetting('air and paper', { schema: 1, note: 'later' })).rejects.toThrow();
  await bringBack(store, copy, 'replace');
  await expect.poll(() => store.saving.value).toBe('saved');
  expect(await store.setting('air and paper')).toEqual(await again('air and paper'));
});
