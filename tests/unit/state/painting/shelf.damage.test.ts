import { openDB } from 'idb';
import { afterEach, describe, expect, test } from 'vitest';
import { createShelf } from '../../../../app/state/painting/shelf.ts';
import { openStore, type Store } from '../../../../app/storage/open-store.ts';
import { easelOver, leaveEasels } from '../../../support/state/made-easel.ts';
import { madeStore } from '../../../support/state/made-store.ts';
import { studioOver } from '../../../support/state/made-studio.ts';
import {
  eventSample,
  newPlanSample,
  paintingSample,
  photoSample,
} from '../../../support/storage/kept-samples.ts';

afterEach(leaveEasels);

let made = 0;

/** Two paintings with a session each; then one row of the first is spoilt, as a damaged disk does. */
async function storeWithDamage(
  table: string,
  spoil: (row: Record<string, unknown>) => object | null,
): Promise<Store> {
  const name = `damage ${made++}`;
  const whole = await openStore({ name });
  for (const id of ['hurt', 'healthy']) {
    await whole.addPainting(paintingSample(id, `of ${id}`), photoSample(`of ${id}`));
    await whole.keepPlan(id, newPlanSample(`plan of ${id}`));
    await whole.keepThumbnail(id, new Uint8Array([1]).buffer);
    await whole.sessionOf(id, `session of ${id}`);
    await whole.appendEvents([eventSample(`session of ${id}`, 0, { kind: 'started' })]);
  }
  whole.close();
  const database = await openDB<unknown>(name);
  const key = (await database.getAllKeys(table)).find((each) =>
    JSON.stringify(each).includes('hurt'),
  );
  if (key === undefined) throw new Error(`nothing to spoil in ${table}`);
  const row = await database.get(table, key);
  const spoilt = spoil(row);
  if (spoilt) await database.put(table, spoilt);
  else await database.delete(table, key);
  database.close();
  return openStore({ name });
}

const without =
  (field: string) =>
  ({ [field]: _, ...rest }: Record<string, unknown>) =>
    rest;
const withField = (field: string, value: unknown) => (row: Record<string, unknown>) => ({
  ...row,
  [field]: value,
});
const removed = () => null;

describe.each([
  ['a painting without its reference', 'paintings', without('reference')],
  ['a painting without its sessions', 'paintings', without('sessionIds')],
  ['sessions that are no list', 'paintings', withField('sessionIds', 7)],
  ['a painting whose title is none', 'paintings', withField('title', { x: 1 })],
  ['a painting that is gone', 'paintings', removed],
  ['a card that is spoilt', 'cards', withField('title', 3)],
  ['a session that is gone', 'sessions', removed],
  ['a session without its plan', 'sessions', without('planId')],
  ['a plan that is gone', 'plans', removed],
  ['a plan without its steps', 'plans', withField('plan', { id: 'x' })],
  ['a reading that is gone', 'readings', removed],
  [
    'a reading whose map is spoilt',
    'readings',
    withField('slotMap', { packing: 'deflate-raw', bytes: new Uint8Array([1, 2, 3]).buffer }),
  ],
  ['a reading that is none', 'readings', withField('reading', null)],
  ['a line of the log that is none', 'events', withField('what', null)],
  ['a picture that is none', 'thumbnails', withField('jpeg', 'words')],
  ['a photo that is gone', 'photos', removed],
] as const)('%s', (_, table, spoil) => {
  test('costs no other painting, and can be taken away', async () => {
    const store = await storeWithDamage(table, spoil);
    const shelf = createShelf(store);
    await shelf.refresh();
    expect(shelf.problem.value).toBeNull();
    expect(shelf.paintings.value.map(({ id }) => id).sort()).toEqual(['healthy', 'hurt']);
    expect(shelf.last.value).not.toBeNull();
    // The healthy one goes on, whatever the other one is.
    const it = await easelOver(store);
    await it.easel.open('healthy');
    expect([it.easel.problem.value, it.kinds()]).toEqual([null, ['started']]);
    // The damaged one is opened without a throw: it is made whole again, or says what is wrong.
    const { studio } = studioOver(store);
    await studio.open('hurt');
    expect(studio.plan.value !== null || studio.problem.value !== null).toBe(true);
    await it.easel.open('hurt');
    expect(it.easel.desk.value !== null || it.easel.problem.value !== null).toBe(true);
    await shelf.remove('hurt');
    expect(shelf.problem.value).toBeNull();
    expect(shelf.paintings.value.map(({ id }) => id)).toEqual(['healthy']);
    expect(shelf.removed.value?.id).toBe('hurt');
    await store.discardPutAway('all');
    expect((await store.cards()).map(({ id }) => id)).toEqual(['healthy']);
    expect(await store.photo('of healthy')).not.toBeNull();
    store.close();
  });
});

test('a damaged painting is marked on the wall once it could not be opened, and is none to go on with', async () => {
  const store = await storeWithDamage('paintings', without('reference'));
  await store.discard('healthy');
  const { studio } = studioOver(store);
  await studio.open('hurt');
  expect(studio.problem.value).toMatch(/damaged, so it can’t be opened/);
  const shelf = createShelf(store);
  await shelf.refresh();
  expect(shelf.paintings.value).toMatchObject([{ id: 'hurt', title: 'hurt', stage: 'damaged' }]);
  expect(shelf.last.value).toBeNull();
  store.close();
});

test('a reading that was spoilt is made again from the photo, and the session goes on', async () => {
  const store = await storeWithDamage(
    'readings',
    withField('slotMap', { packing: 'plain', bytes: new ArrayBuffer(3) }),
  );
  const { studio, client } = studioOver(store);
  await studio.open('hurt');
  expect([client.read.mock.calls.length, studio.problem.value]).toEqual([1, null]);
  expect(studio.plan.value).not.toBeNull();
  store.close();
});

test('the wall asks for small rows alone, however much hangs there', async () => {
  const store = await madeStore();
  for (let i = 0; i < 30; i++)
    await store.addPainting(paintingSample(`p${i}`, `f${i}`), photoSample(`f${i}`, 10));
  const asked: string[] = [];
  const watched = new Proxy(store, {
    get(from, name: keyof Store) {
      asked.push(name);
      return from[name];
    },
  });
  const shelf = createShelf(watched);
  await shelf.refresh();
  expect(shelf.paintings.value).toHaveLength(30);
  expect(new Set(asked)).toEqual(new Set(['cards', 'discardPutAway', 'paintingsPutAway']));
});
