import { refuseBrokenFigures } from './refuse-broken-figures.ts';
import type { SaveState } from './save-state.ts';
import type { TableName } from './schema.ts';
import { storageProblem } from './storage-problem.ts';
import type { Tables, Transaction } from './tables.ts';

type Work<T> = (transaction: Transaction) => Promise<T>;

/** Reads and writes with faults turned into sentences, writes followed and checked besides. */
export interface Keeper {
  read<T>(tables: readonly TableName[], work: Work<T>): Promise<T>;
  /** `what` names the thing kept; answers when its transaction is done. */
  write<T>(what: string, tables: readonly TableName[], work: Work<T>): Promise<T>;
}

export function createKeeper(tables: Tables, { track }: Pick<SaveState, 'track'>): Keeper {
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
        run('readwrite', names, (t) => work(checked(t))),
      ),
  };
}

const checked = (transaction: Transaction): Transaction => ({
  ...transaction,
  put: async (table, row) => {
    refuseBrokenFigures(row, table);
    await transaction.put(table, row);
  },
});
