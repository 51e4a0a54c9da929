import { type ReadonlySignal, signal } from '@preact/signals';
import { openDatabaseTables } from './database-tables.ts';
import { createKeeper } from './keeper.ts';
import { createMemoryTables } from './memory-tables.ts';
import { createPaintings, type Paintings } from './paintings.ts';
import { createPastSessions, type PastSessions } from './past-sessions.ts';
import { createPlans, type Plans } from './plans.ts';
import { createPuttingAway, type PuttingAway } from './putting-away.ts';
import { createSaveState, type SaveState } from './save-state.ts';
import { MIGRATIONS, type Migration } from './schema.ts';
import { createSessionKeepsakes, type SessionKeepsakes } from './session-keepsakes.ts';
import { createSessions, type Sessions } from './sessions.ts';
import { createSettings, type Settings } from './settings.ts';
import { StorageProblem, storageProblem } from './storage-problem.ts';
import type { Tables } from './tables.ts';

export type { PaintingRow } from './paintings.ts';

/** Everything kept on this device. Rejections are StorageProblems, whose message is for the painter. */
export interface Store
  extends Omit<SaveState, 'track'>,
    Paintings,
    PuttingAway,
    Plans,
    Sessions,
    PastSessions,
    SessionKeepsakes,
    Settings {
  /** False where the browser lets nothing be kept: all is forgotten with the window. */
  readonly keeps: boolean;
  /** A standing trouble the painter should know of, in her words; null while all is well. */
  readonly trouble: ReadonlySignal<StorageProblem | null>;
  close(): void;
}

export interface StoreOptions {
  readonly name?: string;
  readonly migrations?: readonly Migration[];
  /** Wall time, ms since 1970. */
  readonly now?: () => number;
  /** Hears of trouble already while opening, when another window has to be closed first. */
  readonly onTrouble?: (trouble: StorageProblem | null) => void;
}

/**
 * Opens the store; waits while another window blocks it. Where the browser has no database or
 * refuses it, the store works from memory. Rejects where data is there that can't be opened.
 */
export async function openStore(options: StoreOptions = {}): Promise<Store> {
  const { name = 'firstwash', migrations = MIGRATIONS, now = Date.now, onTrouble } = options;
  const trouble = signal<StorageProblem | null>(null);
  const say = (problem: StorageProblem | null): void => {
    trouble.value = problem;
    onTrouble?.(problem);
  };
  const tables = await openTables(name, migrations, say);
  const saveState = createSaveState();
  const keeper = createKeeper(tables, saveState);
  return {
    keeps: tables.keeps,
    trouble,
    saving: saveState.saving,
    underWay: saveState.underWay,
    settled: saveState.settled,
    close: tables.close,
    ...createPaintings(keeper, now),
    ...createPuttingAway(keeper, now),
    ...createPlans(keeper, now),
    ...createSessions(keeper, now),
    ...createPastSessions(keeper),
    ...createSessionKeepsakes(keeper),
    ...createSettings(keeper),
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
    const problem = refused(fault) ? new StorageProblem('not-kept', fault) : storageProblem(fault);
    if (problem.kind !== 'not-kept') throw problem;
    say(problem);
    return createMemoryTables();
  }
}

/** Reading the very property throws where all storage is blocked; that is caught by the caller. */
const hasDatabase = (): boolean => Boolean(globalThis.indexedDB);

/** Firefox's private windows once said InvalidStateError for 'not here'. */
const refused = (fault: unknown): boolean =>
  fault instanceof Error && /^(Security|InvalidState)Error$/.test(fault.name);
