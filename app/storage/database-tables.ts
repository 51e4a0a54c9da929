import type { IDBPDatabase, IDBPTransaction } from 'idb';
import { type DatabaseEvents, openDatabase } from './open-database.ts';
import type { Migration, TableName } from './schema.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Access, Tables, Transaction } from './tables.ts';

type Noticed = 'blocked' | 'opened' | 'outdated' | 'gone';

/** Rows kept in IndexedDB. `notice` hears of what concerns the painter outside any one call. */
export async function openDatabaseTables(
  name: string,
  migrations: readonly Migration[],
  notice: (what: Noticed) => void,
): Promise<Tables> {
  let current: IDBPDatabase<unknown> | null = null;
  let opening: Promise<IDBPDatabase<unknown>> | null = null;
  let outdated = false;
  let openedBefore = false;

  const events: DatabaseEvents = {
    blocked: () => notice('blocked'),
    cut: () => lose(current),
    blocking: (newer) => {
      current?.close();
      lose(current);
      if (!newer) return; // deleted from elsewhere: the next call opens it anew
      outdated = true;
      notice('outdated');
    },
    empty: () => openedBefore && notice('gone'),
  };

  function lose(database: IDBPDatabase<unknown> | null): void {
    if (database === current) current = null;
  }

  function connect(): Promise<IDBPDatabase<unknown>> {
    if (outdated) return Promise.reject(new StorageProblem('outdated'));
    if (current) return Promise.resolve(current);
    opening ??= openDatabase(name, migrations, events)
      .then((database) => {
        current = database;
        openedBefore = true;
        notice('opened');
        return database;
      })
      .finally(() => {
        opening = null;
      });
    return opening;
  }

  await connect();
  return {
    keeps: true,
    async run(access, tables, work) {
      for (let tries = 1; ; tries++) {
        let database: IDBPDatabase<unknown> | null = null;
        try {
          database = await connect();
          return await attempt(database, access, tables, work);
        } catch (fault) {
          // Connections are cut in the background, or while all is cleared away, even in the middle of being
          // opened: nothing of the transaction counted, so once more.
          const wasCut = (database && database !== current) || isClosed(fault) || isAborted(fault);
          if (!wasCut || fault instanceof StorageProblem || tries === mostTries) throw fault;
          if (database) lose(database);
        }
      }
    },
    close: () => current?.close(),
  };
}

const mostTries = 3;

const isClosed = (fault: unknown): boolean =>
  fault instanceof DOMException && fault.name === 'InvalidStateError';

async function attempt<T>(
  database: IDBPDatabase<unknown>,
  access: Access,
  tables: readonly TableName[],
  work: (transaction: Transaction) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction([...tables], access, { durability: 'strict' });
  // Too little room is told here, after the put has already said it went well.
  const end = transaction.done.then(
    () => null,
    (fault: unknown) => ({ fault }),
  );
  try {
    const result = await work(rowsOf(transaction));
    const broken = await end;
    if (broken) throw broken.fault;
    return result;
  } catch (fault) {
    abort(transaction);
    const broken = await end;
    const cause = broken?.fault;
    // A request that died with its transaction only says that it was aborted.
    throw isAborted(fault) && cause !== undefined ? cause : fault;
  }
}

const isAborted = (fault: unknown): boolean =>
  fault instanceof DOMException && fault.name === 'AbortError';

function abort(transaction: IDBPTransaction<unknown, string[], Access>): void {
  try {
    transaction.abort();
  } catch (fault) {
    if (!isClosed(fault)) throw fault; // it had ended already
  }
}

function rowsOf(transaction: IDBPTransaction<unknown, string[], Access>): Transaction {
  const table = (name: TableName) => transaction.objectStore(name);
  return {
    get: (name, key) => table(name).get(key),
    all: (name) => table(name).getAll(),
    where: (name, field, value) => table(name).index(field).getAll(value),
    put: async (name, row) => {
      await table(name).put?.(row);
    },
    remove: async (name, key) => {
      await table(name).delete?.(key);
    },
  };
}
