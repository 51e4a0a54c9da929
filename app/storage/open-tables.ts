import { type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { Access, Migration, RowKey, TableName, Tables, Transaction } from './schema.ts';
import { StorageProblem } from './storage-problem.ts';

interface DatabaseEvents {
  /** Another window holds an older version open; opening goes on by itself once it is closed. */
  blocked(): void;
  /** Another window wants this connection closed: for a newer version, or to delete everything. */
  blocking(newer: boolean): void;
  /** The browser cut the connection. */
  cut(): void;
  /** There was nothing there, the database is new. */
  empty(): void;
}

/**
 * Opens the database at the version the list of migrations gives it. A migration that fails leaves
 * everything as it was, and its own fault is thrown. idb alone would not: an asynchronous upgrade
 * that throws leaves the database at the new version, unmigrated; so the transaction is aborted here.
 */
async function openDatabase(
  name: string,
  migrations: readonly Migration[],
  events: DatabaseEvents,
): Promise<IDBPDatabase<unknown>> {
  let fault: unknown;
  try {
    return await openDB<unknown>(name, migrations.length, {
      upgrade: (database, from, _to, transaction) => {
        if (from === 0) events.empty();
        const climb = async (): Promise<void> => {
          for (const migrate of migrations.slice(from)) await migrate(database, transaction);
        };
        climb().catch((error: unknown) => {
          fault = error;
          transaction.done.catch(() => undefined); // `fault` says more than its AbortError
          transaction.abort();
        });
      },
      blocked: () => events.blocked(),
      blocking: (_current, blocked) => events.blocking(blocked !== null),
      terminated: () => events.cut(),
    });
  } catch (error) {
    throw fault ?? error;
  }
}

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
    cut: () => {
      lose(current);
      lookAgain();
    },
    blocking: (newer) => {
      current?.close();
      lose(current);
      if (!newer) return lookAgain(); // deleted from elsewhere
      outdated = true;
      notice('outdated');
    },
    empty: () => openedBefore && notice('gone'),
  };

  /** Opened anew at once: what was cleared away is noticed before she relies on it. */
  function lookAgain(): void {
    connect().catch(() => undefined); // the next call tries again, and tells
  }

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
          const wasCut =
            (database && database !== current) || cutFaults.some((name) => isCalled(fault, name));
          if (!wasCut || fault instanceof StorageProblem || tries === mostTries) throw fault;
          if (database) lose(database);
        }
      }
    },
    close: () => current?.close(),
  };
}

const mostTries = 3;

const isCalled = (fault: unknown, name: string): boolean =>
  fault instanceof DOMException && fault.name === name;
const isClosed = (fault: unknown): boolean => isCalled(fault, 'InvalidStateError');

/** Of a lost connection; UnknownError is what a browser says of a disk that did not answer just then. */
const cutFaults = ['InvalidStateError', 'AbortError', 'UnknownError'];

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

const isAborted = (fault: unknown): boolean => isCalled(fault, 'AbortError');

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
    clear: async (name) => {
      await table(name).clear?.();
    },
  };
}

type Kept = Map<string, Map<string, unknown>>;

const nameOf = (key: RowKey): string => JSON.stringify(key);

/** The key a row is kept under, as in the database: events by session and number, all else by id. */
function keyOf(table: string, row: object): RowKey {
  const { id, sessionId, seq } = row as { id: string; sessionId: string; seq: number };
  return table === 'events' ? [sessionId, seq] : id;
}

/** Where nothing may be kept at all: the app works, and forgets with the window. */
export function createMemoryTables(): Tables {
  let kept: Kept = new Map();
  let last: Promise<unknown> = Promise.resolve();

  async function attempt<T>(work: (transaction: Transaction) => Promise<T>): Promise<T> {
    const draft: Kept = new Map([...kept].map(([name, rows]) => [name, new Map(rows)]));
    const result = await work(transactionOver(draft));
    kept = draft; // a failed transaction never comes here
    return result;
  }

  return {
    keeps: false,
    run: (_access, _tables, work) => {
      const mine = last.then(() => attempt(work));
      last = mine.catch(() => undefined); // its caller hears of it; the next one must still run
      return mine;
    },
    close() {},
  };
}

function transactionOver(draft: Kept): Transaction {
  const rowsOf = (table: string): Map<string, unknown> => {
    const rows = draft.get(table) ?? new Map<string, unknown>();
    draft.set(table, rows);
    return rows;
  };
  return {
    get: async (table, key) => structuredClone(rowsOf(table).get(nameOf(key))) as never,
    all: async (table) => structuredClone([...rowsOf(table).values()]) as never,
    where: async (table, field, value) =>
      structuredClone(
        [...rowsOf(table).values()].filter(
          (row) => (row as Record<string, unknown>)[field] === value,
        ),
      ) as never,
    put: async (table, row) => {
      rowsOf(table).set(nameOf(keyOf(table, row)), structuredClone(row));
    },
    remove: async (table, key) => {
      rowsOf(table).delete(nameOf(key));
    },
    clear: async (table) => {
      rowsOf(table).clear();
    },
  };
}
