import { computed, type ReadonlySignal, signal } from '@preact/signals';

export type Saving = 'saved' | 'saving' | 'failed';

/** What the screen says about keeping: 'saved' only when every write's transaction is done. */
export interface SaveState {
  readonly saving: ReadonlySignal<Saving>;
  /** Number of writes under way. */
  readonly underWay: ReadonlySignal<number>;
  /** Follows one write. `what` names the thing: its failure stands until the same thing is kept. */
  track<T>(what: string, write: Promise<T>): Promise<T>;
  /** Answers when no write is under way. */
  settled(): Promise<void>;
}

export function createSaveState(): SaveState {
  const underWay = signal(0);
  const failed = signal<ReadonlySet<string>>(new Set());
  const waiting: (() => void)[] = [];

  function end(what: string, well: boolean): void {
    const now = new Set(failed.value);
    if (well) now.delete(what);
    else now.add(what);
    failed.value = now;
    underWay.value--;
    if (underWay.value === 0) for (const go of waiting.splice(0)) go();
  }

  return {
    underWay,
    saving: computed(() =>
      underWay.value > 0 ? 'saving' : failed.value.size > 0 ? 'failed' : 'saved',
    ),
    async track(what, write) {
      underWay.value++;
      let well = false;
      try {
        const result = await write;
        well = true;
        return result;
      } finally {
        end(what, well);
      }
    },
    settled: () =>
      underWay.value === 0 ? Promise.resolve() : new Promise((go) => void waiting.push(go)),
  };
}
