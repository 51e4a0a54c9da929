import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Store } from '../storage/open-store.ts';
import type { PaintingSpace } from '../storage/space.ts';
import { describeFault } from './describe-fault.ts';

interface SpaceRow extends PaintingSpace {
  readonly id: string;
  readonly title: string;
}

/** What her paintings take up on this device, and the way to take up less. */
export interface SpaceUsed {
  /** The largest first, as they are measured. */
  readonly rows: ReadonlySignal<readonly SpaceRow[]>;
  readonly totalBytes: ReadonlySignal<number>;
  readonly measuring: ReadonlySignal<boolean>;
  readonly problem: ReadonlySignal<string | null>;
  /** Measures one painting after the other, so that it never holds much in memory. */
  open(signal: AbortSignal): Promise<void>;
  /** The photos of its record are deleted; what she did stays written. */
  dropRecordPhotos(id: string): Promise<void>;
}

export type SpaceStore = Pick<Store, 'cards' | 'spaceOf' | 'dropRecordPhotos'>;

export function createSpaceUsed(store: SpaceStore): SpaceUsed {
  const rows = signal<readonly SpaceRow[]>([]);
  const measuring = signal(false);
  const problem = signal<string | null>(null);

  async function measure(id: string, title: string): Promise<void> {
    const row = { id, title, ...(await store.spaceOf(id)) };
    const others = rows.value.filter((each) => each.id !== id);
    rows.value = [...others, row].sort((a, b) => b.bytes - a.bytes);
  }

  async function tryQuietly(work: () => Promise<void>): Promise<void> {
    problem.value = null;
    try {
      await work();
    } catch (fault) {
      problem.value = describeFault(fault);
    }
  }

  return {
    rows,
    totalBytes: computed(() => rows.value.reduce((sum, { bytes }) => sum + bytes, 0)),
    measuring,
    problem,
    async open(signal) {
      measuring.value = true;
      rows.value = [];
      await tryQuietly(async () => {
        for (const { id, title } of await store.cards()) {
          if (signal.aborted) return;
          await measure(id, title);
        }
      });
      measuring.value = false;
    },
    dropRecordPhotos: (id) =>
      tryQuietly(async () => {
        await store.dropRecordPhotos(id);
        const row = rows.value.find((each) => each.id === id);
        if (row) await measure(id, row.title);
      }),
  };
}
