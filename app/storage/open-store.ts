import { type ReadonlySignal, signal } from '@preact/signals';
import type { Backups } from './backup/backups.ts';
import { type Cards, createCards } from './cards.ts';
import type { KeepAgain } from './keep-again.ts';
import { createMemoryTables, openDatabaseTables } from './open-tables.ts';
import { createPaintings, type Paintings } from './paintings.ts';
import { createPlans, type Plans } from './plans.ts';
import { MIGRATIONS, type Migration, type Tables } from './schema.ts';
import {
  createPastSessions,
  createSessionKeepsakes,
  createSessions,
  type PastSessions,
  type SessionKeepsakes,
  type Sessions,
} from './sessions.ts';
import { createSettings, type Settings } from './settings.ts';
import type { Space } from './space.ts';
import { StorageProblem, storageProblem } from './storage-problem.ts';
import {
  createSaveState,
  createTransactions,
  type SaveState,
  type Transactions,
} from './transactions.ts';
import { createTrash, type Trash } from './trash.ts';

interface SeldomUsed extends KeepAgain, Space {
  /** Copies to keep elsewhere. */
  backups(): Promise<Backups>;
}

/** Fetched when it is first asked for, so that the first load stays small. */
function createSeldomUsed(
  transactions: Transactions,
  readTimeMs: () => number,
  onReplaced: () => void,
): SeldomUsed {
  const space = async (): Promise<Space> => (await import('./space.ts')).createSpace(transactions);
  return {
    spaceOf: async (id) => (await space()).spaceOf(id),
    dropRecordPhotos: async (id) => (await space()).dropRecordPhotos(id),
    backups: async () =>
      (await import('./backup/backups.ts')).createBackups(transactions, readTimeMs, onReplaced),
    async keepAgain(work) {
      const { createKeepAgain } = await import('./keep-again.ts');
      await createKeepAgain(transactions, readTimeMs).keepAgain(work);
    },
  };
}

/** Everything kept on this device. Rejections are StorageProblems, whose message is for the painter. */
export interface Store
  extends Omit<SaveState, 'track'>,
    Paintings,
    Cards,
    SeldomUsed,
    Trash,
    Plans,
    Sessions,
    PastSessions,
    SessionKeepsakes,
    Settings {
  /** False where the browser lets nothing be kept: all is forgotten with the window. */
  readonly keeps: boolean;
  /** A standing trouble the painter should know of, in her words; null while all is well. */
  readonly trouble: ReadonlySignal<StorageProblem | null>;
  /** What was open when all was cleared is kept again. */
  sayKeptAgain(): void;
  close(): void;
}

export interface StoreOptions {
  readonly name?: string;
  readonly migrations?: readonly Migration[];
  /** Wall time, ms since 1970. */
  readonly readTimeMs?: () => number;
  /** Hears of trouble already while opening, when another window has to be closed first. */
  readonly onTrouble?: (trouble: StorageProblem | null) => void;
  /** After so long a setting that could not be stored is tried again, ms; as usual where left out. */
  readonly retryMs?: number;
}

/**
 * Opens the store; waits while another window blocks it. Where the browser has no database or
 * refuses it, the store works from memory. Rejects where data is there that can't be opened.
 */
export async function openStore(options: StoreOptions = {}): Promise<Store> {
  const {
    name = 'firstwash',
    migrations = MIGRATIONS,
    readTimeMs = Date.now,
    onTrouble,
    retryMs,
  } = options;
  const trouble = signal<StorageProblem | null>(null);
  const say = (problem: StorageProblem | null): void => {
    trouble.value = problem;
    onTrouble?.(problem);
  };
  const tables = await openTables(name, migrations, say);
  const saveState = createSaveState();
  const transactions = createTransactions(tables, saveState);
  const kept = createSettings({ transactions, retryMs });
  return {
    keeps: tables.keeps,
    trouble,
    saving: saveState.saving,
    underWay: saveState.underWay,
    settled: saveState.settled,
    sayKeptAgain: () => say(new StorageProblem('kept-again')),
    close() {
      kept.close();
      tables.close();
    },
    ...createPaintings(transactions, readTimeMs),
    ...createCards(transactions),
    ...createSeldomUsed(transactions, readTimeMs, kept.letGo),
    ...createTrash(transactions, readTimeMs, kept.letGo),
    ...createPlans(transactions, readTimeMs),
    ...createSessions(transactions, readTimeMs),
    ...createPastSessions(transactions),
    ...createSessionKeepsakes(transactions),
    ...kept.settings,
  };
}

async function openTables(
  name: string,
  migrations: readonly Migration[],
  say: (problem: StorageProblem | null) => void,
): Promise<Tables> {
  let blocked = false;
  try {
    if (!hasDatabase()) throw new StorageProblem('not-kept');
    return await openDatabaseTables(name, migrations, (what) => {
      if (what !== 'opened') say(new StorageProblem(what));
      else if (blocked) say(null);
      blocked = what === 'blocked';
    });
  } catch (fault) {
    const problem = isRefused(fault)
      ? new StorageProblem('not-kept', fault)
      : storageProblem(fault);
    if (problem.kind !== 'not-kept') throw problem;
    say(problem);
    return createMemoryTables();
  }
}

/** Reading the very property throws where all storage is blocked; that is caught by the caller. */
const hasDatabase = (): boolean => Boolean(globalThis.indexedDB);

/** Firefox's private windows once said InvalidStateError for 'not here'. */
const isRefused = (fault: unknown): boolean =>
  fault instanceof Error && /^(Security|InvalidState)Error$/.test(fault.name);
