import { type IDBPDatabase, openDB } from 'idb';
import type { Migration } from './schema.ts';

export interface DatabaseEvents {
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
export async function openDatabase(
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
