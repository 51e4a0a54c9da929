import { afterEach, describe, expect, test } from 'vitest';
import { cdp } from 'vitest/browser';
import { openStore, type Store } from '../../app/storage/open-store.ts';
import { newPlanSample, paintingSample, photoSample } from '../support/storage/kept-samples.ts';

let store: Store;
let number = 0;

async function fresh(): Promise<string> {
  const name = `browser test ${number++}`;
  store = await openStore({ name });
  return name;
}

interface Session {
  send(method: string, parameters: object): Promise<unknown>;
}
const browser = (): Session => cdp() as unknown as Session;
const { origin } = location;

afterEach(() => store.close());

test('a photo of 5 MB is kept whole and comes back after the store is opened anew', async () => {
  const name = await fresh();
  const photo = photoSample('photo', 5_000_000);
  await store.addPainting(paintingSample('a', 'photo'), photo);
  expect(store.saving.value).toBe('saved');
  store.close();
  store = await openStore({ name });
  const back = await store.photo('photo');
  expect(back?.bytes).toBeInstanceOf(ArrayBuffer);
  const digest = async (bytes: ArrayBuffer) =>
    new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)).join();
  expect(await digest(back?.bytes ?? new ArrayBuffer(0))).toBe(await digest(photo.bytes));
});

test('a plan with its slot map comes back', async () => {
  await fresh();
  await store.addPainting(paintingSample('a', 'photo'), photoSample('photo'));
  const made = newPlanSample('plan');
  await store.keepPlan('a', made);
  expect(await store.keptReading('a', 'r')).toEqual(made.kept);
});

test('photo and painting: a failing second put takes the first back', async () => {
  await fresh();
  const unclonable = { ...paintingSample('a', 'photo'), title: (() => '') as unknown as string };
  await expect(store.addPainting(unclonable, photoSample('photo'))).rejects.toThrow();
  expect(await store.photo('photo')).toBeNull();
  expect(store.saving.value).toBe('failed');
});

describe('the device is full', () => {
  afterEach(() => browser().send('Storage.overrideQuotaForOrigin', { origin }));

  test('not saved is said, nothing is half saved, and it works again once there is room', async () => {
    // Chromium remembers for a while how much room there was: cleared, it asks anew.
    await browser().send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
    await browser().send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 300_000 });
    await fresh();
    await store.addPainting(paintingSample('old', 'p0'), photoSample('p0'));
    const adding = () => store.addPainting(paintingSample('a', 'p1'), photoSample('p1', 3_000_000));
    await expect(adding()).rejects.toMatchObject({
      name: 'StorageError',
      kind: 'no-room',
      message: expect.stringMatching(/^Not saved: there is too little room.*Delete paintings/),
    });
    expect(store.saving.value).toBe('failed');
    expect(await store.photo('p1')).toBeNull();
    expect((await store.paintings()).map(({ painting }) => painting.id)).toEqual(['old']);
    expect(await store.photo('p0')).not.toBeNull();
    await browser().send('Storage.overrideQuotaForOrigin', { origin });
    await adding();
    expect(store.saving.value).toBe('saved');
    expect((await store.photo('p1'))?.bytes.byteLength).toBe(3_000_000);
  });
});

test('the browser clears everything: opened once more, kept, and said', async () => {
  await fresh();
  await store.keepSetting('a', 1);
  await browser().send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await store.keepSetting('b', 2);
  expect(await store.setting('b')).toBe(2);
  expect(await store.setting('a')).toBeNull();
  expect(store.trouble.value?.kind).toBe('gone');
  expect(store.saving.value).toBe('saved');
});

test('a connection cut while writing: the write is there all the same', async () => {
  const connections: IDBDatabase[] = [];
  const plain = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...args) {
    const request = plain.apply(this, args);
    request.addEventListener('success', () => connections.push(request.result));
    return request;
  };
  try {
    await fresh();
    connections.at(-1)?.close();
    await store.addPainting(paintingSample('a', 'photo'), photoSample('photo', 2_000_000));
    expect(connections).toHaveLength(2);
    expect(await store.painting('a')).toEqual(paintingSample('a', 'photo'));
  } finally {
    IDBFactory.prototype.open = plain;
  }
});
