import type { Transactions } from '../transactions.ts';
import { openBackup } from './open-backup.ts';
import {
  type CheckedBackup,
  checkBackup,
  type RestoreWay,
  restoreBackup,
} from './restore-backup.ts';
import { type BackupWish, type WrittenBackup, writeBackup } from './write-backup.ts';

/** Copies of what is kept here: one file each, to be kept elsewhere. */
export interface Backups {
  /** Writes a copy into `sink`. */
  write(
    signal: AbortSignal,
    wish: BackupWish,
    sink: WritableStream<Uint8Array>,
  ): Promise<WrittenBackup>;
  /** Reads a copy through and says what it would bring. Rejects with a BackupProblem; nothing is changed. */
  check(signal: AbortSignal, file: Blob, onPart?: (part: number) => void): Promise<CheckedBackup>;
  /** All of it, or nothing. */
  restore(
    signal: AbortSignal,
    checked: CheckedBackup,
    way: RestoreWay,
    onPart?: (part: number) => void,
  ): Promise<void>;
}

export const createBackups = (transactions: Transactions, readTimeMs: () => number): Backups => ({
  write: (signal, wish, sink) => writeBackup(signal, transactions, wish, sink),
  async check(signal, file, onPart) {
    return checkBackup(signal, transactions, await openBackup(signal, file), onPart);
  },
  restore: (signal, checked, way, onPart) =>
    restoreBackup(signal, transactions, checked, way, readTimeMs, onPart),
});
