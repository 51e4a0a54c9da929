import { type ReadonlySignal, signal } from '@preact/signals';
import { createRetry } from './retry-later.ts';
import { sessionOfKeepsake } from './sessions.ts';
import { type StorageProblem, storageProblem } from './storage-problem.ts';
import type { Transactions } from './transactions.ts';

/** Small values by name. One that could not be stored counts all the same, and is tried again by itself. */
export interface Settings {
  /** What counts under that name; null where there is nothing. The reader checks its shape. */
  setting(name: string): Promise<unknown>;
  /** Rejects where it can't be stored now: it waits then, and what was kept before it stays. */
  keepSetting(name: string, value: unknown): Promise<void>;
  /**
   * Keeps what `how` makes of what is kept by then (null where nothing is), and answers it. Rejects where it can't be
   * stored; only its caller can try again.
   */
  changeSetting<T>(name: string, how: (kept: unknown) => T): Promise<T>;
  /** As `keepSetting`, of nothing. */
  forgetSetting(name: string): Promise<void>;
  /** Names of those that wait to be stored, and why; a name goes as soon as its last value is there. */
  readonly unkeptSettings: ReadonlySignal<ReadonlyMap<string, StorageProblem>>;
}

/** What a name was last set to in this window; null where it was taken away. */
type Wanted = { readonly value: unknown } | null;

interface SettingsNeeds {
  readonly transactions: Transactions;
  readonly retryMs: number | undefined;
}

/** A figure that is none can never be stored; an outdated window stores nothing any more. */
const mayWait = ({ kind }: StorageProblem): boolean => kind !== 'broken-figure';
const mayTryAgain = ({ kind }: StorageProblem): boolean => kind !== 'outdated';

export function createSettings({ transactions, retryMs }: SettingsNeeds) {
  const wanted = new Map<string, Wanted>();
  const unkept = signal<ReadonlyMap<string, StorageProblem>>(new Map());
  let closed = false;

  function note(name: string, problem: StorageProblem | null): void {
    if (!problem && !unkept.peek().has(name)) return;
    const next = new Map(unkept.peek());
    if (problem) next.set(name, problem);
    else next.delete(name);
    unkept.value = next;
  }

  /** What belongs to a session that is gone, discarded in another window perhaps, is let go. */
  const write = (name: string, what: Wanted): Promise<void> =>
    transactions.write(`setting ${name}`, ['settings', 'sessions'], async (t) => {
      const session = sessionOfKeepsake(name);
      const isWanted = what && (session === null || (await t.get('sessions', session)));
      await (isWanted ? t.put('settings', { id: name, ...what }) : t.remove('settings', name));
    });

  /** Of several on their way at once only the one set last decides what waits. */
  async function send(name: string, what: Wanted): Promise<void> {
    try {
      await write(name, what);
      if (wanted.get(name) === what) note(name, null);
    } catch (fault) {
      const problem = storageProblem(fault);
      if (mayWait(problem) && wanted.has(name)) {
        note(name, problem);
        if (mayTryAgain(problem)) retry();
      }
      throw problem;
    }
  }

  async function keep(name: string, what: Wanted): Promise<void> {
    const before = wanted.get(name);
    wanted.set(name, what);
    try {
      await send(name, what);
    } catch (fault) {
      const stays = before !== undefined && wanted.get(name) === what;
      if (stays && !mayWait(storageProblem(fault))) wanted.set(name, before);
      throw fault;
    }
  }

  const retry = createRetry(() => {
    if (closed) return;
    for (const name of unkept.peek().keys())
      send(name, wanted.get(name) ?? null).catch(() => undefined); // it waits on
  }, retryMs);

  const settings: Settings = {
    async setting(name) {
      const waits = (): boolean => unkept.peek().has(name);
      const stored = waits()
        ? null
        : await transactions.read(['settings'], async (t) => t.get('settings', name));
      return (waits() ? wanted.get(name) : stored)?.value ?? null;
    },
    keepSetting: (name, value) => keep(name, { value }),
    forgetSetting: (name) => keep(name, null),
    changeSetting: (name, how) =>
      transactions.write(`setting ${name}`, ['settings'], async (t) => {
        const value = how((await t.get('settings', name))?.value ?? null);
        await t.put('settings', { id: name, value });
        return value;
      }),
    unkeptSettings: unkept,
  };
  return {
    settings,
    /** What they belong to is gone: they, all of them where no names are given, are no longer wanted, nor wait. */
    letGo(names: readonly string[] = [...wanted.keys()]): void {
      for (const name of names) {
        wanted.delete(name);
        if (!unkept.peek().has(name)) continue;
        note(name, null);
        transactions.write(`setting ${name}`, ['settings'], async () => {}).catch(() => undefined);
      }
    },
    /** Nothing is tried again after this. */
    close(): void {
      closed = true;
    },
  };
}
