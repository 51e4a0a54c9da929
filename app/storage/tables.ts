import type { LookUpField, Rows, TableName } from './schema.ts';

export type RowKey = string | [string, number];

/** What may be done within one transaction. Await nothing else in it: the database closes it. */
export interface Transaction {
  get<N extends TableName>(table: N, key: RowKey): Promise<Rows[N] | undefined>;
  all<N extends TableName>(table: N): Promise<Rows[N][]>;
  where<N extends TableName>(table: N, field: LookUpField, value: string): Promise<Rows[N][]>;
  put<N extends TableName>(table: N, row: Rows[N]): Promise<void>;
  remove(table: TableName, key: RowKey): Promise<void>;
}

export type Access = 'readonly' | 'readwrite';

/** Somewhere rows are kept. A transaction is all or nothing, and done for good when `run` answers. */
export interface Tables {
  /** False where everything is forgotten with the window. */
  readonly keeps: boolean;
  /** `work` may be run a second time when the connection was cut before the first could count. */
  run<T>(
    access: Access,
    tables: readonly TableName[],
    work: (transaction: Transaction) => Promise<T>,
  ): Promise<T>;
  close(): void;
}
