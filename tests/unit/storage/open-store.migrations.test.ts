import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import { openStore } from '../../../app/storage/open-store.ts';
import { MIGRATIONS, type Migration } from '../../../app/storage/schema.ts';
import { paintingSample, photoSample } from '../../support/storage/kept-samples.ts';

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

let number = 0;
async function keptAtVersion(version: number): Promise<string> {
  const name = `migrations ${number++}`;
  const store = await openStore({ name, migrations: more.slice(0, version) });
  await store.addPainting(paintingSample('a', 'pa'), photoSample('pa'));
  store.close();
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
  const name = await keptAtVersion(3);
  await expect(openStore({ name, migrations: MIGRATIONS })).rejects.toMatchObject({
    kind: 'newer-data',
  });
  expect((await facts(name)).version).toBe(3);
});
