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
import type { Space } from './space.ts';
import { StorageProblem, storageProblem } from './storage-problem.ts';
import {
  createSaveState,
  createTransactions,
  type SaveState,
  type Transactions,
} from './transactions.ts';
import { createTrash, type Trash } from './trash.ts';

interface Settings {
  /** What was kept under that name; null where nothing was. The reader checks its shape. */
  setting(name: string): Promise<unknown>;
  keepSetting(name: string, value: unknown): Promise<void>;
  /** Keeps what `how` makes of what is kept by then (null where nothing is), and answers it. */
  changeSetting<T>(name: string, how: (kept: unknown) => T): Promise<T>;
  forgetSetting(name: string): Promise<void>;
}

function createSettings(transactions: Transactions): Settings {
  return {
    setting: (name) =>
      transactions.read(['settings'], async (t) => (await t.get('settings', name))?.value ?? null),
    keepSetting: (name, value) =>
      transactions.write(`setting ${name}`, ['settings'], (t) =>
        t.put('settings', { id: name, value }),
      ),
    changeSetting: (name, how) =>
      transactions.write(`setting ${name}`, ['settings'], async (t) => {
        const value = how((await t.get('settings', name))?.value ?? null);
        await t.put('settings', { id: name, value });
        return value;
      }),
    forgetSetting: (name) =>
      transactions.write(`setting ${name}`, ['settings'], (t) => t.remove('settings', name)),
  };
}

interface SeldomUsed extends KeepAgain, Space {
  /** Copies to keep elsewhere. */
  backups(): Promise<Backups>;
}

/** Fetched when it is first asked for, so that the first load stays small. */
function createSeldomUsed(transactions: Transactions, readTimeMs: () => number): SeldomUsed {
  const space = async (): Promise<Space> => (await import('./space.ts')).createSpace(transactions);
  return {
    spaceOf: async (id) => (await space()).spaceOf(id),
    dropRecordPhotos: async (id) => (await space()).dropRecordPhotos(id),
    backups: async () =>
      (await import('./backup/backups.ts')).createBackups(transactions, readTimeMs),
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

interface StoreOptions {
  readonly name?: string;
  readonly migrations?: readonly Migration[];
  /** Wall time, ms since 1970. */
  readonly readTimeMs?: () => number;
  /** Hears of trouble already while opening, when another window has to be closed first. */
  readonly onTrouble?: (trouble: StorageProblem | null) => void;
}

/**
 * Opens the store; waits while another window blocks it. Where the browser has no database or
 * refuses it, the store works from memory. Rejects where data is there that can't be opened.
 */
export async function openStore(options: StoreOptions = {}): Promise<Store> {
  const { name = 'firstwash', migrations = MIGRATIONS, readTimeMs = Date.now, onTrouble } = options;
  const trouble = signal<StorageProblem | null>(null);
  const say = (problem: StorageProblem | null): void => {
    trouble.value = problem;
    onTrouble?.(problem);
  };
  const tables = await openTables(name, migrations, say);
  const saveState = createSaveState();
  const transactions = createTransactions(tables, saveState);
  return {
    keeps: tables.keeps,
    trouble,
    saving: saveState.saving,
    underWay: saveState.underWay,
    settled: saveState.settled,
    sayKeptAgain: () => say(new StorageProblem('kept-again')),
    close: tables.close,
    ...createPaintings(transactions, readTimeMs),
    ...createCards(transactions),
    ...createSeldomUsed(transactions, readTimeMs),
    ...createTrash(transactions, readTimeMs),
    ...createPlans(transactions, readTimeMs),
    ...createSessions(transactions, readTimeMs),
    ...createPastSessions(transactions),
    ...createSessionKeepsakes(transactions),
    ...createSettings(transactions),
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
