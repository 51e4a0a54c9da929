import 'fake-indexeddb/auto';
import { afterEach, describe, expect, test } from 'vitest';
import { openStore, type Store } from '../../../app/storage/open-store.ts';
import {
  eventSample,
  newPlanSample,
  paintingSample,
  photoSample,
} from '../../support/storage/kept-samples.ts';

let number = 0;
let store: Store;
let clock = 1000;

async function fresh(how: 'database' | 'memory'): Promise<Store> {
  clock = 1000;
  const factory = globalThis.indexedDB;
  if (how === 'memory') Reflect.deleteProperty(globalThis, 'indexedDB');
  try {
    store = await openStore({ name: `test ${number++}`, readTimeMs: () => clock });
  } finally {
    globalThis.indexedDB = factory;
  }
  return store;
}

afterEach(() => store.close());

describe.each(['database', 'memory'] as const)('kept in the %s', (how) => {
  test('says whether it keeps', async () => {
    const { keeps, trouble } = await fresh(how);
    expect(keeps).toBe(how === 'database');
    expect(trouble.value?.kind ?? null).toBe(how === 'database' ? null : 'not-kept');
  });

  test('photo and painting come back as they were', async () => {
    const it = await fresh(how);
    const photo = photoSample('photo', 5000);
    await it.addPainting(paintingSample('a', 'photo'), photo);
    expect(await it.photo('photo')).toEqual(photo);
    expect(await it.painting('a')).toEqual(paintingSample('a', 'photo'));
    expect(await it.photo('none')).toBeNull();
  });

  test('lists the newest first, with pictures', async () => {
    const it = await fresh(how);
    await it.addPainting(paintingSample('a', 'pa', 10), photoSample('pa'));
    await it.addPainting(paintingSample('b', 'pb', 30), photoSample('pb'));
    await it.addPainting(paintingSample('c', 'pc', 20), photoSample('pc'));
    const jpeg = new Uint8Array([1, 2, 3]).buffer;
    await it.keepThumbnail('c', jpeg);
    const rows = await it.paintings();
    expect(rows.map(({ painting }) => painting.id)).toEqual(['b', 'c', 'a']);
    expect(rows[1]?.thumbnail).toEqual(jpeg);
    expect(rows[0]?.thumbnail).toBeNull();
  });

  test('a change is made over what is kept, so that two add up', async () => {
    const it = await fresh(how);
    await it.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
    const adding = (id: string) =>
      it.changePainting('a', (kept) => ({ ...kept, planIds: [...kept.planIds, id] }));
    await Promise.all([adding('one'), adding('two')]);
    expect(await it.painting('a')).toMatchObject({ planIds: ['one', 'two'], updatedAt: 1000 });
    await expect(it.changePainting('none', (kept) => kept)).rejects.toThrow('no longer here');
  });

  test('a figure that is none is refused, and what was kept stays', async () => {
    const it = await fresh(how);
    await it.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
    for (const turn of [Number.NaN, Number.POSITIVE_INFINITY]) {
      await expect(
        it.changePainting('a', (kept) => ({
          ...kept,
          reference: { ...kept.reference, crop: { ...kept.reference.crop, turn } },
        })),
      ).rejects.toMatchObject({ name: 'StorageError', kind: 'broken-figure' });
    }
    expect(it.saving.value).toBe('failed');
    expect((await it.painting('a'))?.reference.crop.turn).toBe(0);
  });

  test('photo and painting go in together or not at all', async () => {
    const it = await fresh(how);
    const broken = { ...paintingSample('a', 'pa'), updatedAt: Number.NaN };
    await expect(it.addPainting(broken, photoSample('pa'))).rejects.toThrow('Not saved');
    expect(await it.photo('pa')).toBeNull();
    expect(await it.paintings()).toEqual([]);
  });

  test('put away, brought back, discarded after a week with all that hangs on it', async () => {
    const it = await fresh(how);
    await it.addPainting(paintingSample('a', 'shared', 5), photoSample('shared'));
    await it.addPainting(paintingSample('b', 'shared', 4), photoSample('shared'));
    await it.keepPlan('a', newPlanSample('plan'));
    const { sessionId } = await it.sessionOf('a', 'session');
    await it.appendEvents([eventSample(sessionId, 0, { kind: 'started' })]);
    await it.putAway('a');
    expect((await it.paintings()).map(({ painting }) => painting.id)).toEqual(['b']);
    expect((await it.paintingsPutAway()).map(({ id }) => id)).toEqual(['a']);
    await it.bringBack('a');
    expect((await it.paintings()).map(({ painting }) => painting.id)).toEqual(['a', 'b']);

    await it.putAway('a');
    clock += 7 * 24 * 60 * 60 * 1000;
    expect(await it.discardPutAway('old')).toBe(0);
    clock += 1;
    expect(await it.discardPutAway('old')).toBe(1);
    expect(await it.painting('a')).toBeNull();
    expect(await it.keptPlan('a', 'k')).toBeNull();
    expect(await it.keptReading('a', 'r')).toBeNull();
    expect(await it.events('session')).toEqual([]);
    expect(await it.photo('shared')).not.toBeNull(); // the other painting is from the same photo
    await it.discard('b');
    expect(await it.photo('shared')).toBeNull();
  });

  test('photos for the record and a note being typed go with their painting, and only with it', async () => {
    const it = await fresh(how);
    for (const id of ['a', 'b']) {
      await it.addPainting(paintingSample(id, `of ${id}`), photoSample(`of ${id}`));
      await it.keepPlan(id, newPlanSample(`plan ${id}`));
      await it.sessionOf(id, id);
      await it.keepRecordPhoto(id, photoSample(`${id} 1`), 'wash 1');
      await it.appendEvents([
        eventSample(id, 0, { kind: 'photo', photoId: `${id} 1`, key: 'wash 1' }),
      ]);
      await it.keepRecordPhoto(id, photoSample(`${id} 2`), 'dry 1'); // its line never came
      await it.keepSetting(`note draft ${id}`, 'Granulates');
    }
    expect(await it.lastRecordPhoto('a')).toEqual({ photoId: 'a 2', key: 'dry 1' });
    expect(await it.photo('a 1')).toEqual(photoSample('a 1'));
    await it.discard('a');
    for (const id of ['a 1', 'a 2', 'of a']) expect(await it.photo(id)).toBeNull();
    expect(await it.lastRecordPhoto('a')).toBeNull();
    expect(await it.setting('note draft a')).toBeNull();
    for (const id of ['b 1', 'b 2', 'of b']) expect(await it.photo(id)).not.toBeNull();
    expect(await it.setting('note draft b')).toBe('Granulates');
  });

  test('plans and readings come back by what they were made from', async () => {
    const it = await fresh(how);
    await it.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
    const made = newPlanSample('plan 1', 'palette of 5');
    expect((await it.keepPlan('a', made)).planIds).toEqual(['plan 1']);
    await it.keepPlan('a', newPlanSample('plan 2', 'palette of 3'));
    expect(await it.keptPlan('a', 'palette of 5')).toEqual(made.plan);
    expect(await it.keptPlan('a', 'other')).toBeNull();
    expect(await it.keptReading('a', 'r')).toEqual(made.kept);
    expect((await it.painting('a'))?.planIds).toEqual(['plan 1', 'plan 2']);
  });

  test('old readings go, but never that of a session', async () => {
    const it = await fresh(how);
    await it.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
    for (let i = 0; i < 8; i++) {
      clock++;
      await it.keepPlan('a', newPlanSample(`plan ${i}`, `k ${i}`, `r ${i}`));
      if (i === 1) await it.sessionOf('a', 'session');
    }
    const left = await Promise.all(
      Array.from({ length: 8 }, (_, i) => it.keptReading('a', `r ${i}`)),
    );
    expect(left.map(Boolean)).toEqual([false, true, false, false, true, true, true, true]);
    expect((await it.sessionOf('a', 'other')).plan.id).toBe('plan 1');
  });

  test('a session goes on until it is finished; then another begins over the latest plan', async () => {
    const it = await fresh(how);
    await it.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
    await expect(it.sessionOf('a', 'too early')).rejects.toMatchObject({ kind: 'missing' });
    expect((await it.painting('a'))?.sessionIds).toEqual([]);
    await it.keepPlan('a', newPlanSample('plan 1'));
    const asked = await Promise.all([it.sessionOf('a', 's1'), it.sessionOf('a', 's2')]);
    expect(asked.map(({ sessionId }) => sessionId)).toEqual(['s1', 's1']);
    await it.appendEvents([eventSample('s1', 0, { kind: 'started' })]);
    await it.keepPlan('a', newPlanSample('plan 2', 'other'));
    expect(await it.sessionOf('a', 's3')).toMatchObject({
      sessionId: 's1',
      plan: { id: 'plan 1' },
    });
    await it.appendEvents([eventSample('s1', 1, { kind: 'finished' })]);
    expect(await it.sessionOf('a', 's4')).toMatchObject({
      sessionId: 's4',
      plan: { id: 'plan 2' },
    });
    expect((await it.session('s1')).plan.id).toBe('plan 1');
    expect((await it.painting('a'))?.sessionIds).toEqual(['s1', 's4']);
  });

  test('a log keeps its order past ten lines, takes a line once, and refuses another window’s', async () => {
    const it = await fresh(how);
    const lines = Array.from({ length: 12 }, (_, i) =>
      eventSample('s', i, { kind: 'note', text: `${i}` }),
    );
    await it.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
    await it.keepPlan('a', newPlanSample('plan'));
    await it.sessionOf('a', 's');
    expect(await it.appendEvents(lines.slice(6))).toBe(true);
    expect(await it.appendEvents(lines.slice(0, 7))).toBe(true);
    expect(await it.appendEvents([eventSample('other', 0, { kind: 'started' })])).toBe(false);
    expect(await it.events('other')).toEqual([]);
    expect(await it.events('s')).toEqual(lines);
    const rival = { ...eventSample('s', 11, { kind: 'paused' }), id: 'rival' };
    const both = [eventSample('s', 12, { kind: 'paused' }), rival];
    await expect(it.appendEvents(both)).rejects.toMatchObject({ kind: 'taken' });
    expect(await it.events('s')).toEqual(lines);
  });

  test('settings', async () => {
    const it = await fresh(how);
    expect(await it.setting('left hand')).toBeNull();
    await it.keepSetting('left hand', true);
    await it.keepSetting('left hand', { yes: [1] });
    expect(await it.setting('left hand')).toEqual({ yes: [1] });
  });
});

test('saved is said only when all writes are done', async () => {
  const it = await fresh('database');
  expect(it.saving.value).toBe('saved');
  const writes = [it.keepSetting('a', 1), it.keepSetting('b', 2)];
  expect(it.saving.value).toBe('saving');
  expect(it.underWay.value).toBe(2);
  await it.settled();
  expect(it.saving.value).toBe('saved');
  expect(await it.setting('b')).toBe(2);
  await Promise.all(writes);
});

test('a failure stands until the same thing is kept', async () => {
  const it = await fresh('database');
  await expect(it.keepSetting('a', Number.NaN)).rejects.toThrow();
  await it.keepSetting('b', 1);
  expect(it.saving.value).toBe('failed');
  await it.keepSetting('a', 1);
  expect(it.saving.value).toBe('saved');
});

test('what is kept outlives the store', async () => {
  const it = await fresh('database');
  await it.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
  it.close();
  store = await openStore({ name: `test ${number - 1}` });
  expect(await store.painting('a')).toEqual(paintingSample('a', 'pa'));
});

test('all storage blocked: reading the property throws, the app still works', async () => {
  const plain = Object.getOwnPropertyDescriptor(globalThis, 'indexedDB');
  Object.defineProperty(globalThis, 'indexedDB', {
    configurable: true,
    get() {
      throw new DOMException('', 'SecurityError');
    },
  });
  try {
    store = await openStore({ name: 'refused' });
  } finally {
    if (plain) Object.defineProperty(globalThis, 'indexedDB', plain);
  }
  expect(store.keeps).toBe(false);
  await store.keepSetting('a', 1);
  expect(await store.setting('a')).toBe(1);
  expect(store.trouble.value?.message).toContain('nothing will be kept');
});
