import type { RowKey, Tables, Transaction } from './tables.ts';

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
  };
}
