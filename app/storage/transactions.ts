import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { TableName, Tables, Transaction } from './schema.ts';
import { StorageProblem, storageProblem } from './storage-problem.ts';

type Saving = 'saved' | 'saving' | 'failed';

/** What the screen says about keeping: 'saved' only when every write's transaction is done. */
export interface SaveState {
  readonly saving: ReadonlySignal<Saving>;
  /** Number of writes under way. */
  readonly underWay: ReadonlySignal<number>;
  /**
   * Follows one write. `what` names the thing: its failure stands until the same thing is kept by a write that began
   * later.
   */
  track<T>(what: string, write: Promise<T>): Promise<T>;
  /** Answers when no write is under way. */
  settled(): Promise<void>;
}

export function createSaveState(): SaveState {
  const underWay = signal(0);
  /** By thing, the number of the last write that failed. */
  const failed = signal<ReadonlyMap<string, number>>(new Map());
  const waiting: (() => void)[] = [];
  let writes = 0;

  function end(what: string, number: number, well: boolean): void {
    const before = failed.value.get(what) ?? 0;
    const stillFailed = new Map(failed.value);
    if (!well) stillFailed.set(what, Math.max(before, number));
    else if (before < number) stillFailed.delete(what);
    failed.value = stillFailed;
    underWay.value--;
    if (underWay.value === 0) for (const go of waiting.splice(0)) go();
  }

  return {
    underWay,
    saving: computed(() =>
      underWay.value > 0 ? 'saving' : failed.value.size > 0 ? 'failed' : 'saved',
    ),
    async track(what, write) {
      const number = ++writes;
      underWay.value++;
      let well = false;
      try {
        const result = await write;
        well = true;
        return result;
      } finally {
        end(what, number, well);
      }
    },
    settled: () =>
      underWay.value === 0 ? Promise.resolve() : new Promise((go) => void waiting.push(go)),
  };
}

/**
 * Throws where anything about to be kept holds a number that is none, or is endless: kept, it would
 * come back as something that looks right. Bytes cannot hold such and are passed over.
 */
function refuseBrokenFigures(value: unknown, path = 'row'): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value))
      throw new StorageProblem('broken-figure', new RangeError(`${path} is ${value}`));
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  if (value instanceof ArrayBuffer || ArrayBuffer.isView(value)) return;
  for (const [key, inner] of Object.entries(value)) refuseBrokenFigures(inner, `${path}.${key}`);
}

type Work<T> = (transaction: Transaction) => Promise<T>;

/** Reads and writes with faults turned into sentences, writes followed and checked besides. */
export interface Transactions {
  read<T>(tables: readonly TableName[], work: Work<T>): Promise<T>;
  /** `what` names the thing kept; answers when its transaction is done. */
  write<T>(what: string, tables: readonly TableName[], work: Work<T>): Promise<T>;
}

export function createTransactions(
  tables: Tables,
  { track }: Pick<SaveState, 'track'>,
): Transactions {
  const run = async <T>(
    access: 'readonly' | 'readwrite',
    names: readonly TableName[],
    work: Work<T>,
  ): Promise<T> => {
    try {
      return await tables.run(access, names, work);
    } catch (fault) {
      throw storageProblem(fault);
    }
  };
  return {
    read: (names, work) => run('readonly', names, work),
    write: (what, names, work) =>
      track(
        what,
        run('readwrite', names, (t) => work(checkRows(t))),
      ),
  };
}

const checkRows = (transaction: Transaction): Transaction => ({
  ...transaction,
  put: async (table, row) => {
    refuseBrokenFigures(row, table);
    await transaction.put(table, row);
  },
});
