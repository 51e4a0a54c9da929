import { expect, test } from 'vitest';
import { hideLocation } from '../../../../app/core/reference/hide-location.ts';
import { measuresOf } from '../../../../app/core/session/compared-sheets.ts';
import type { EventBody } from '../../../../app/core/session/session-event.ts';
import type { Backups } from '../../../../app/storage/backup/backups.ts';
import { openStore, type Store } from '../../../../app/storage/open-store.ts';
import { judgedSample } from '../../../support/compare/judged.ts';
import { failPuts } from '../../../support/storage/failing-put.ts';
import { eventSample, paintingSample, photoSample } from '../../../support/storage/kept-samples.ts';
import {
  asJson,
  bringBack,
  copyOf,
  everythingIn,
  filesOf,
  fillStore,
  madeBox,
  taggedPhoto,
} from '../../../support/storage/made-backup.ts';

let made = 0;
async function madeHere({ filled = true, readTimeMs = (): number => 7000 } = {}) {
  const name = `restore ${made++}`;
  const store = await openStore({ name, readTimeMs });
  if (filled) await fillStore(store);
  return { name, store };
}

const endless = new AbortController().signal;
const arrivals = async (store: Store, copy: Blob) => {
  const checked = await (await store.backups()).check(endless, copy);
  return Object.fromEntries(checked.paintings.map(({ id, arrival }) => [id, arrival]));
};

test('a copy of everything brought back into an empty place is all there', async () => {
  const here = await madeHere();
  const copy = await copyOf(here.store, { places: true });
  expect([...(await filesOf(copy)).keys()].sort()).toEqual([
    'box.json',
    'manifest.json',
    'paintings/0001/painting.json',
    'paintings/0001/photo-0001.jpg',
    'paintings/0001/photo-0002.jpg',
    'paintings/0001/plan-0001.json',
    'paintings/0001/reading-0001.json',
    'paintings/0002/painting.json',
    'paintings/0002/photo-0001.jpg',
    'settings.json',
  ]);
  const there = await madeHere({ filled: false });
  expect(await arrivals(there.store, copy)).toEqual({ a: 'new', b: 'new' });
  await bringBack(there.store, copy);
  expect(await everythingIn(there.name)).toEqual(await everythingIn(here.name));
  expect(await arrivals(there.store, copy)).toEqual({ a: 'same', b: 'same' });
  const [card] = await there.store.cards();
  expect(card?.stand).toEqual({ step: 1, steps: 2, minutes: null });
});

test('a copy is told for what it is: its photos, its box beside the box here, and what is only here', async () => {
  const here = await madeHere();
  const copy = await copyOf(here.store, { places: true });
  const there = await madeHere({ filled: false });
  const told = async (store: Store, file = copy) => {
    const parts: number[] = [];
    const checked = await (await store.backups()).check(endless, file, (part) => parts.push(part));
    expect(parts).toEqual(checked.paintings.map((_, i) => (i + 1) / checked.paintings.length));
    const { holds, places, box, onlyHere } = checked;
    return { holds, places, box, onlyHere };
  };
  const everything = { holds: 'everything', places: true };
  expect(await told(there.store)).toEqual({ ...everything, box: 'joins', onlyHere: 0 });
  await bringBack(there.store, copy);
  expect(await told(there.store)).toEqual({ ...everything, box: 'same', onlyHere: 0 });
  await there.store.addPainting(paintingSample('only here', 'only here'), photoSample('only here'));
  expect(await told(there.store)).toMatchObject({ box: 'same', onlyHere: 1 });
});

test('photos go as they are, but say where they were taken only when she wants it', async () => {
  const { store } = await madeHere();
  const photo = new Uint8Array(await taggedPhoto());
  for (const places of [true, false]) {
    const files = await filesOf(await copyOf(store, { places }));
    expect(asJson(files.get('manifest.json')).places).toBe(places);
    for (const name of ['0001/photo-0001.jpg', '0001/photo-0002.jpg', '0002/photo-0001.jpg'])
      expect(files.get(`paintings/${name}`)).toEqual(places ? photo : hideLocation(photo));
  }
  expect(hideLocation(photo)).not.toBe(photo);
});

test('one painting, and the box alone', async () => {
  const here = await madeHere();
  const there = await madeHere({ filled: false });
  await bringBack(there.store, await copyOf(here.store, { scope: { kind: 'painting', id: 'b' } }));
  expect((await there.store.cards()).map(({ id }) => id)).toEqual(['b']);
  expect(await there.store.setting('paint box')).toBeNull();
  await bringBack(there.store, await copyOf(here.store, { scope: { kind: 'box' } }));
  expect(await there.store.setting('paint box')).toEqual(madeBox);
  expect(await there.store.setting('air and paper')).toBeNull();
  expect((await there.store.cards()).map(({ id }) => id)).toEqual(['b']);
});

test('the later of two versions counts, and whatever only one of them has is kept of both', async () => {
  let clock = 7000;
  const here = await madeHere({ readTimeMs: () => clock });
  const copy = await copyOf(here.store);
  clock = 8000;
  await here.store.changePainting('a', (before) => ({ ...before, title: 'changed since' }));
  await here.store.appendEvents([eventSample('s a', 4, { kind: 'paused' })]);
  await here.store.dropRecordPhotos('a');
  await here.store.addPainting(paintingSample('c', 'photo c', 9), photoSample('photo c'));
  await here.store.putAway('b');
  expect(await arrivals(here.store, copy)).toEqual({ a: 'later here', b: 'brought back' });
  await bringBack(here.store, copy);
  expect((await here.store.painting('a'))?.title).toBe('changed since');
  expect((await here.store.events('s a')).map(({ what }) => what.kind)).toEqual([
    ...['started', 'step-begun', 'photo', 'note', 'paused'],
  ]);
  expect(await here.store.photo('record a')).not.toBeNull();
  expect((await here.store.painting('b'))?.deletedAt).toBeUndefined();
  expect((await here.store.cards()).map(({ id }) => id).sort()).toEqual(['a', 'b', 'c']);

  // The other way round: a later copy goes over what is here.
  const later = await copyOf(here.store);
  const there = await madeHere();
  expect(await arrivals(there.store, later)).toMatchObject({ a: 'later in the copy', b: 'same' });
  await bringBack(there.store, later);
  expect((await there.store.painting('a'))?.title).toBe('changed since');
  expect(await there.store.events('s a')).toHaveLength(5);
});

test('where all is replaced only what the copy has is left, her box too', async () => {
  const here = await madeHere();
  const copy = await copyOf(here.store, { places: true });
  const before = await everythingIn(here.name);
  await here.store.addPainting(paintingSample('c', 'photo c', 9), photoSample('photo c'));
  await here.store.changePainting('a', (kept) => ({ ...kept, title: 'changed since' }));
  await here.store.keepSetting('paint box', { ...madeBox, owned: ['PY150'] });
  await here.store.keepSetting('note draft of another', 'gone');
  const checked = await (await here.store.backups()).check(endless, copy);
  expect(checked.onlyHere).toBe(1);
  await bringBack(here.store, copy, 'replace');
  expect(await everythingIn(here.name)).toEqual({
    ...before,
    settings: [...(before.settings ?? [])],
  });
});

test('one painting of a copy can take the place of a later one; its record stays whole', async () => {
  let clock = 7000;
  const here = await madeHere({ readTimeMs: () => clock });
  const copy = await copyOf(here.store, { scope: { kind: 'painting', id: 'a' } });
  clock = 8000;
  await here.store.changePainting('a', (kept) => ({ ...kept, title: 'changed since' }));
  await here.store.appendEvents([eventSample('s a', 4, { kind: 'paused' })]);
  await bringBack(here.store, copy, 'replace');
  expect((await here.store.painting('a'))?.title).toBe('a');
  expect(await here.store.events('s a')).toHaveLength(5);
  expect((await here.store.cards()).length).toBe(2);
});

test.each(['photos', 'paintings', 'cards', 'plans', 'events', 'settings', 'thumbnails'])(
  'a device that fails at the table %s: nothing is changed, and it can be tried again',
  async (table) => {
    const source = await madeHere();
    const copy = await copyOf(source.store);
    const here = await madeHere({ filled: false });
    await here.store.addPainting(paintingSample('c', 'photo c', 9), photoSample('photo c'));
    const before = await everythingIn(here.name);
    for (const way of ['merge', 'replace'] as const) {
      const end = failPuts(table, 'QuotaExceededError');
      await expect(bringBack(here.store, copy, way)).rejects.toThrow(/too little room/);
      end();
      expect(await everythingIn(here.name)).toEqual(before);
      expect(here.store.saving.value).toBe('saved');
    }
    await bringBack(here.store, copy);
    expect((await here.store.cards()).map(({ id }) => id).sort()).toEqual(['a', 'b', 'c']);
  },
);

/** Painting 'b' is damaged: what is kept of it is `row`. */
async function damaged(name: string, row: object): Promise<void> {
  const database = await new Promise<IDBDatabase>((resolve) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => resolve(request.result);
  });
  await new Promise((done) => {
    const transaction = database.transaction('paintings', 'readwrite');
    transaction.objectStore('paintings').put({ id: 'b', ...row });
    transaction.oncomplete = done;
  });
  database.close();
}

const usual = { places: false, app: 'a test', madeAt: 1 };

test('a painting that is damaged is left out of a copy and named; with nothing there it says so', async () => {
  const { name, store } = await madeHere();
  await damaged(name, { title: 'half a painting' });
  const backups: Backups = await store.backups();
  const wish = { ...usual, scope: { kind: 'everything' } } as const;
  expect(await backups.write(endless, wish, new WritableStream())).toEqual({
    paintings: 1,
    leftOut: ['b'],
  });
  const empty = await madeHere({ filled: false });
  await expect(copyOf(empty.store)).rejects.toThrow(/nothing to copy yet/);
});

test('what is left of a damaged painting can be saved, and says so when it is to be brought back', async () => {
  const { name, store } = await madeHere();
  await damaged(name, { title: 7, reference: { photoId: 'photo b' } });
  const backups: Backups = await store.backups();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const sink = () =>
    new WritableStream<Uint8Array>({ write: (chunk) => void parts.push(new Uint8Array(chunk)) });
  expect(await backups.writeRemains(endless, 'b', usual, sink())).toBe(1);
  const remains = new Blob(parts);
  const files = await filesOf(remains);
  const photo = hideLocation(new Uint8Array(await taggedPhoto()));
  expect(files.get('paintings/0001/photo-0001.jpg')).toEqual(photo);
  expect(asJson(files.get('paintings/0001/painting.json')).painting.title).toBe(7);
  await expect(bringBack(store, remains)).rejects.toThrow(/left of a damaged painting/);
  const gone = backups.writeRemains(endless, 'no such', usual, sink());
  await expect(gone).rejects.toThrow(/Nothing of this painting/);
});

test('what is stopped half-way changes nothing', async () => {
  const source = await madeHere();
  const copy = await copyOf(source.store);
  const here = await madeHere({ filled: false });
  const before = await everythingIn(here.name);
  const backups = await here.store.backups();
  const checked = await backups.check(endless, copy);
  const stop = new AbortController();
  const restoring = backups.restore(stop.signal, checked, 'merge', () => stop.abort());
  await expect(restoring).rejects.toMatchObject({ name: 'AbortError' });
  expect(await everythingIn(here.name)).toEqual(before);
  expect(here.store.saving.value).toBe('saved');
});

test('a comparison of her sheet goes along, with its photo', async () => {
  const here = await madeHere();
  const lines: EventBody[] = [
    { kind: 'photo', photoId: 'sheet a', key: 'wash/sheet/1' },
    {
      ...{ kind: 'compared', photoId: 'sheet a', key: 'wash/sheet/1' },
      ...measuresOf(judgedSample(), { wetness: 'satin', bare: [[0.2, -0.01]] }),
    },
  ];
  await here.store.keepRecordPhoto('s a', photoSample('sheet a'), 'wash/sheet/1');
  const count = (await here.store.events('s a')).length;
  await here.store.appendEvents(lines.map((what, n) => eventSample('s a', count + n, what)));
  const there = await madeHere({ filled: false });
  await bringBack(there.store, await copyOf(here.store, { places: true }));
  expect(await there.store.events('s a')).toEqual(await here.store.events('s a'));
  expect(await there.store.photo('sheet a')).toEqual(await here.store.photo('sheet a'));
});
