import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { createMemoryTables, openDatabaseTables } from '../../../app/storage/open-tables.ts';
import { MIGRATIONS, type Tables } from '../../../app/storage/schema.ts';

const open = (name: string): Promise<Tables> =>
  openDatabaseTables(name, MIGRATIONS, () => undefined);
const kinds: readonly (readonly [string, (name: string) => Promise<Tables>])[] = [
  ['in the database', open],
  ['in memory', async () => createMemoryTables()],
];
const setting = (tables: Tables, id: string): Promise<unknown> =>
  tables.run('readonly', ['settings'], (rows) => rows.get('settings', id));

describe.each(kinds)('rows kept %s', (kind, tablesOf) => {
  test('a fault of the work is the fault told, and nothing of the work is kept', async () => {
    const tables = await tablesOf(`${kind} fault`);
    const fault = new Error('the work itself');
    const work = tables.run('readwrite', ['settings'], async (rows) => {
      await rows.put('settings', { id: 'a', value: 1 } as never);
      throw fault;
    });
    await expect(work).rejects.toBe(fault);
    expect(await setting(tables, 'a')).toBeUndefined();
    tables.close();
  });

  test('what was put is there, replaced by the same key, and gone when removed', async () => {
    const tables = await tablesOf(`${kind} rows`);
    const write = (work: Parameters<Tables['run']>[2]) =>
      tables.run('readwrite', ['settings', 'events'], work);
    await write(async (rows) => {
      await rows.put('settings', { id: 'a', value: 1 } as never);
      await rows.put('settings', { id: 'b', value: 2 } as never);
      await rows.put('settings', { id: 'a', value: 3 } as never);
      for (const seq of [0, 1, 2]) {
        const sessionId = seq < 2 ? 's' : 't';
        await rows.put('events', { id: `e${seq}`, sessionId, seq } as never);
      }
    });
    const all = () => tables.run('readonly', ['settings'], (rows) => rows.all('settings'));
    expect(await all()).toMatchObject([
      { id: 'a', value: 3 },
      { id: 'b', value: 2 },
    ]);
    const events = await tables.run('readonly', ['events'], (rows) =>
      rows.where('events', 'sessionId', 's'),
    );
    expect(events.map(({ id }) => id)).toEqual(['e0', 'e1']);
    await write((rows) => rows.remove('settings', 'a'));
    expect(await all()).toMatchObject([{ id: 'b', value: 2 }]);
    tables.close();
  });
});

test('in memory, what was handed in or out can be changed without changing what is kept', async () => {
  const tables = createMemoryTables();
  expect(tables.keeps).toBe(false);
  const row = { id: 'a', value: [1] };
  await tables.run('readwrite', ['settings'], (rows) => rows.put('settings', row as never));
  row.value.push(2);
  const read = (await setting(tables, 'a')) as typeof row;
  expect(read.value).toEqual([1]);
  read.value.push(3);
  expect(await setting(tables, 'a')).toEqual({ id: 'a', value: [1] });
});

/** Connections as they are opened, so that a test can cut them. */
function catchConnections(): { readonly caught: IDBDatabase[]; restore(): void } {
  const caught: IDBDatabase[] = [];
  const plain = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...args) {
    const request = plain.apply(this, args);
    request.addEventListener('success', () => caught.push(request.result));
    return request;
  };
  return {
    caught,
    restore: () => {
      IDBFactory.prototype.open = plain;
    },
  };
}

test('a connection that is cut again and again is opened anew twice, then its fault is told', async () => {
  const { caught, restore } = catchConnections();
  try {
    const tables = await open('cut');
    let tries = 0;
    const work = tables.run('readonly', ['settings'], async (rows) => {
      tries++;
      const row = await rows.get('settings', 'a');
      caught.at(-1)?.close();
      throw new DOMException(`cut ${tries} ${row}`, 'InvalidStateError');
    });
    await expect(work).rejects.toThrow('cut 3');
    expect([tries, caught.length]).toEqual([3, 3]);
    tables.close();
  } finally {
    restore();
  }
});

test('a fault of the work that is no cut is told at once', async () => {
  const tables = await open('once');
  let tries = 0;
  const work = tables.run('readonly', ['settings'], async () => {
    tries++;
    throw new DOMException('no such row', 'NotFoundError');
  });
  await expect(work).rejects.toThrow('no such row');
  expect(tries).toBe(1);
  tables.close();
});
