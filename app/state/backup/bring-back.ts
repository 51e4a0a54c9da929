import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { BackupProblem } from '../../storage/backup/backup-problem.ts';
import type { CheckedBackup, RestoreWay } from '../../storage/backup/restore-backup.ts';
import type { Store } from '../../storage/open-store.ts';
import { describeFault } from '../describe-fault.ts';

/** A copy being looked through and brought back. */
export interface BringBack {
  /** What is being done and how much of it, 0..1; null while nothing is. */
  readonly work: ReadonlySignal<{ readonly doing: 'checking' | 'bringing'; part: number } | null>;
  /** A copy that is whole, with what would happen. */
  readonly checked: ReadonlySignal<CheckedBackup | null>;
  readonly done: ReadonlySignal<boolean>;
  /** The id of the painting that was brought back, where it was all of the copy; null else. */
  readonly broughtOne: ReadonlySignal<string | null>;
  readonly problem: ReadonlySignal<string | null>;
  open(file: Blob): Promise<void>;
  bring(way: RestoreWay): Promise<void>;
  stop(): void;
}

interface Needs {
  readonly store: Pick<Store, 'backups' | 'settled'>;
  /** Whether any window has a session at the easel. */
  readonly inSessionAnywhere: () => Promise<boolean>;
  /** What is shown of box, air and paintings is read again. */
  readonly onBrought: () => Promise<void>;
}

export function createBringBack({ store, inSessionAnywhere, onBrought }: Needs): BringBack {
  const checked = signal<CheckedBackup | null>(null);
  const doing = signal<'checking' | 'bringing' | null>(null);
  const part = signal(0);
  const done = signal(false);
  const broughtOne = signal<string | null>(null);
  const problem = signal<string | null>(null);
  let stopping = new AbortController();

  async function attempt(
    what: 'checking' | 'bringing',
    work: (signal: AbortSignal) => Promise<void>,
  ): Promise<void> {
    stopping.abort();
    stopping = new AbortController();
    const { signal: stopped } = stopping;
    problem.value = null;
    done.value = false;
    broughtOne.value = null;
    part.value = 0;
    doing.value = what;
    try {
      await work(stopped);
    } catch (fault) {
      if (!stopped.aborted) problem.value = describeFault(fault);
    }
    if (stopping.signal === stopped) doing.value = null;
  }
  const onPart = (value: number): void => {
    part.value = value;
  };

  return {
    work: computed(() => (doing.value ? { doing: doing.value, part: part.value } : null)),
    checked,
    done,
    broughtOne,
    problem,
    open(file) {
      checked.value = null;
      return attempt('checking', async (stopped) => {
        await store.settled();
        const found = await (await store.backups()).check(stopped, file, onPart);
        if (!stopped.aborted) checked.value = found;
      });
    },
    bring: (way) =>
      attempt('bringing', async (stopped) => {
        const copy = checked.value;
        if (!copy) return;
        if (await inSessionAnywhere()) throw new BackupProblem('painting');
        await store.settled();
        await (await store.backups()).restore(stopped, copy, way, onPart);
        checked.value = null;
        broughtOne.value = copy.holds === 'painting' ? (copy.paintings[0]?.id ?? null) : null;
        done.value = true;
        await onBrought();
      }),
    stop() {
      stopping.abort();
      doing.value = null;
      checked.value = null;
    },
  };
}
