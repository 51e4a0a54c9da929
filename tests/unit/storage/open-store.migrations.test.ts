import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import type { Decision } from '../../../app/core/decisions/painting.ts';
import { openStore } from '../../../app/storage/open-store.ts';
import { MIGRATIONS, type Migration } from '../../../app/storage/schema.ts';
import {
  eventSample,
  paintingSample,
  photoSample,
  planSample,
} from '../../support/storage/kept-samples.ts';

const retitle: Migration = async (_, transaction) => {
  const table = transaction.objectStore('paintings');
  for (const painting of await table.getAll())
    await table.put({ ...painting, title: `${painting.title}, again` });
};
const more: readonly Migration[] = [
  ...MIGRATIONS,
  (database) => void database.createObjectStore('sketches', { keyPath: 'id' }),
  retitle,
];
const failing: readonly Migration[] = [
  ...more,
  async (database, transaction) => {
    database.createObjectStore('half', { keyPath: 'id' });
    await transaction.objectStore('paintings').clear();
    throw new RangeError('a migration that fails after it has begun');
  },
];

/** Rows as a version of long ago wrote them. */
async function keepAt(
  name: string,
  version: number,
  rows: Readonly<Record<string, readonly object[]>>,
): Promise<void> {
  const database = await openDB<unknown>(name, version, {
    upgrade: async (db, _from, _to, transaction) => {
      for (const migrate of more.slice(0, version)) await migrate(db, transaction);
    },
  });
  for (const [table, its] of Object.entries(rows))
    for (const row of its) await database.put(table, row);
  database.close();
}

let number = 0;
async function keptAtVersion(version: number): Promise<string> {
  const name = `migrations ${number++}`;
  await keepAt(name, version, {
    paintings: [paintingSample('a', 'pa')],
    photos: [photoSample('pa')],
  });
  return name;
}

async function facts(name: string) {
  const database = await openDB(name);
  const found = { version: database.version, tables: [...database.objectStoreNames] };
  database.close();
  return found;
}

test('today’s schema', async () => {
  const name = await keptAtVersion(MIGRATIONS.length);
  expect(await facts(name)).toEqual({
    version: MIGRATIONS.length,
    tables: [
      'cards',
      'events',
      'paintings',
      'photos',
      'plans',
      'readings',
      'sessions',
      'settings',
      'thumbnails',
    ],
  });
});

test.each(Array.from({ length: more.length }, (_, i) => i + 1))(
  'climbs from version %d to the newest with everything kept',
  async (version) => {
    const name = await keptAtVersion(version);
    const store = await openStore({ name, migrations: more });
    const title = version < more.length ? 'a, again' : 'a';
    expect(await store.painting('a')).toMatchObject({ title });
    expect(await store.photo('pa')).toEqual(photoSample('pa'));
    store.close();
    expect((await facts(name)).version).toBe(more.length);
  },
);

test('a migration that fails leaves version, tables and rows as they were', async () => {
  const name = await keptAtVersion(1);
  await expect(openStore({ name, migrations: failing })).rejects.toMatchObject({
    kind: 'unreadable',
    cause: { message: 'a migration that fails after it has begun' },
  });
  expect(await facts(name)).toMatchObject({ version: 1 });
  expect((await facts(name)).tables).not.toContain('half');
  const store = await openStore({ name, migrations: MIGRATIONS });
  expect(await store.painting('a')).toEqual(paintingSample('a', 'pa'));
  store.close();
});

test('data of a newer version is left alone, and said so', async () => {
  const newer = MIGRATIONS.length + 1;
  const name = await keptAtVersion(newer);
  await expect(openStore({ name, migrations: MIGRATIONS })).rejects.toMatchObject({
    kind: 'newer-data',
  });
  expect((await facts(name)).version).toBe(newer);
});

// The ids the two wrongly named paints had in version 1.
const wrongYellow = 'py35-cadmium-yellow';
const wrongLemon = 'py175-lemon-yellow';

test('from version 1: what she decided and owns names the yellows as they are called now', async () => {
  const name = `migrations ${number++}`;
  const mix = [{ paint: wrongLemon, parts: 2 }];
  const decisions: Decision[] = [
    { id: '1', at: 1, kind: 'bands', count: 4 },
    {
      id: '2',
      at: 2,
      kind: 'palette',
      n: 3,
      must: [wrongYellow],
      exclude: [wrongLemon],
      chosen: ['pb29-ultramarine-blue', wrongYellow],
    },
    { id: '3', at: 3, kind: 'colours', wish: { mode: 'one', paint: wrongLemon } },
    { id: '4', at: 4, kind: 'plan-edit', edit: { kind: 'mix', mix: 'm', parts: mix, load: 1 } },
  ];
  const own = { id: 'own-1', optics: { from: 'like', id: wrongYellow } };
  const box = { schema: 1, owned: [wrongYellow, 'pb29-ultramarine-blue'], paints: [own], gone: [] };
  const draft = { new: { name: '', ci: '', like: wrongLemon, hers: {} } };
  await keepAt(name, 1, {
    paintings: [{ ...paintingSample('a', 'pa'), decisions }],
    settings: [
      { id: 'paint box', value: box },
      { id: 'paint draft', value: draft },
      { id: 'paint measure', value: { [wrongYellow]: [{ frame: {}, is: null }] } },
      { id: 'air', value: { said: wrongLemon } },
    ],
  });

  const later = await openStore({ name });
  expect((await later.painting('a'))?.decisions).toEqual([
    decisions[0],
    {
      ...decisions[1],
      must: ['hue-cadmium-yellow'],
      exclude: ['hue-lemon-yellow'],
      chosen: ['pb29-ultramarine-blue', 'hue-cadmium-yellow'],
    },
    { ...decisions[2], wish: { mode: 'one', paint: 'hue-lemon-yellow' } },
    {
      ...decisions[3],
      edit: { kind: 'mix', mix: 'm', parts: [{ paint: 'hue-lemon-yellow', parts: 2 }], load: 1 },
    },
  ]);
  expect(await later.setting('paint box')).toEqual({
    ...box,
    owned: ['hue-cadmium-yellow', 'pb29-ultramarine-blue'],
    paints: [{ id: 'own-1', optics: { from: 'like', id: 'hue-cadmium-yellow' } }],
    renamed: ['hue-cadmium-yellow'],
  });
  expect(await later.setting('paint draft')).toMatchObject({ new: { like: 'hue-lemon-yellow' } });
  expect(Object.keys((await later.setting('paint measure')) as object)).toEqual([
    'hue-cadmium-yellow',
  ]);
  expect(await later.setting('air')).toEqual({ said: wrongLemon }); // no paint is meant there
  await later.keepSetting('paint box', { owned: [wrongYellow] }); // a true PY35, ticked since
  later.close();

  const again = await openStore({ name });
  expect(await again.setting('paint box')).toEqual({ owned: [wrongYellow] });
  again.close();
});

test.each([null, 'words', [1], { owned: 'words' }, { owned: [1, null] }])(
  'a spoilt box, %j, does not hinder it',
  async (spoilt) => {
    const name = `migrations ${number++}`;
    await keepAt(name, 1, { settings: [{ id: 'paint box', value: spoilt }] });
    const later = await openStore({ name });
    expect(await later.setting('paint box')).toEqual(spoilt);
    later.close();
  },
);

test('a wall from before cards: each painting has one, a damaged one too, with where it stands', async () => {
  const name = `migrations ${number++}`;
  const session = { id: 's', paintingId: 'begun', planId: 'p' };
  await keepAt(name, 2, {
    paintings: [
      { ...paintingSample('begun', 'b', 3), planIds: ['p'], sessionIds: ['s'] },
      { ...paintingSample('no plan left', 'b', 2), planIds: ['q'], sessionIds: ['t'] },
      { ...paintingSample('away', 'b', 1), deletedAt: 5 },
      { id: 'spoilt', title: 'Spoilt', decisions: [], sessionIds: 7 },
    ],
    thumbnails: [{ id: 'begun', jpeg: new ArrayBuffer(3) }],
    sessions: [session],
    plans: [{ id: 'p', paintingId: 'begun', plan: planSample('p') }],
    events: [eventSample('s', 0, { kind: 'step-begun', key: 'wash 2' })],
  });
  const store = await openStore({ name });
  expect(await store.cards()).toMatchObject([
    { id: 'begun', sessionId: 's', stand: { step: 2, steps: 2, minutes: null }, pictureAt: 0 },
    { id: 'no plan left', planned: true, stand: null, pictureAt: null },
    { id: 'away', deletedAt: 5, stand: null },
    { id: 'spoilt', title: 'Spoilt', damaged: true },
  ]);
  store.close();
});
