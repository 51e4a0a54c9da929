import type { Transactions } from '../transactions.ts';
import { openBackup } from './open-backup.ts';
import {
  type CheckedBackup,
  checkBackup,
  type RestoreWay,
  restoreBackup,
} from './restore-backup.ts';
import { type BackupWish, type WrittenBackup, writeBackup, writeRemains } from './write-backup.ts';

/** Copies of what is kept here: one file each, to be kept elsewhere. */
export interface Backups {
  /** Writes a copy into `sink`. */
  write(
    signal: AbortSignal,
    wish: BackupWish,
    sink: WritableStream<Uint8Array>,
  ): Promise<WrittenBackup>;
  /** What is left of a damaged painting, to be looked at; answers how many photos. */
  writeRemains(
    signal: AbortSignal,
    id: string,
    wish: Omit<BackupWish, 'scope' | 'onPart'>,
    sink: WritableStream<Uint8Array>,
  ): Promise<number>;
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

/** `onReplaced` hears that all that was here has been replaced. */
export const createBackups = (
  transactions: Transactions,
  readTimeMs: () => number,
  onReplaced: () => void,
): Backups => ({
  write: (signal, wish, sink) => writeBackup(signal, transactions, wish, sink),
  writeRemains: (signal, id, wish, sink) => writeRemains(signal, transactions, id, wish, sink),
  async check(signal, file, onPart) {
    return checkBackup(signal, transactions, await openBackup(signal, file), onPart);
  },
  async restore(signal, checked, way, onPart) {
    await restoreBackup(signal, transactions, checked, way, readTimeMs, onPart);
    if (way === 'replace' && checked.holds === 'everything') onReplaced();
  },
});
