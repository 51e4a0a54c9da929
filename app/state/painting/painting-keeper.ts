import { type ReadonlySignal, signal } from '@preact/signals';
import type { Painting } from '../../core/decisions/painting.ts';
import type { Store } from '../../storage/open-store.ts';
import { createRetry } from '../../storage/retry-later.ts';
import { StorageProblem } from '../../storage/storage-problem.ts';
import { describeFault } from '../describe-fault.ts';

/** How a painting is changed: applied to what is shown at once, and to what is kept. */
type Change = (before: Painting) => Painting;

/** The painting on the screen. What could not be kept stays shown, is said, and goes with the next change. */
export interface PaintingKeeper {
  readonly painting: ReadonlySignal<Painting | null>;
  /** Why a change is not kept, in words; null as soon as all are. */
  readonly problem: ReadonlySignal<string | null>;
  /** Shows a painting as it is kept, with what waits to be kept; null where it is not there. */
  open(id: string): Promise<Painting | null>;
  /** Answers when it is kept, or when it is said that it is not; never rejects. */
  change(how: Change): Promise<void>;
  /** The store has written the painting otherwise. */
  adopt(kept: Painting): void;
}

interface Needs {
  readonly store: Pick<Store, 'painting' | 'changePainting'>;
  readonly retryMs?: number;
}

/** Trying again by itself is no use there. */
const lasting = ['missing', 'damaged', 'outdated', 'broken-figure'];
const isOf = (fault: unknown, kinds: readonly string[]): boolean =>
  fault instanceof StorageProblem && kinds.includes(fault.kind);

export function createPaintingKeeper({ store, retryMs }: Needs): PaintingKeeper {
  const painting = signal<Painting | null>(null);
  const problem = signal<string | null>(null);
  let waiting: readonly { readonly id: string; readonly how: Change }[] = [];
  let last: Promise<void> = Promise.resolve();
  let opened = '';

  const waitingFor = (id: string) => waiting.filter((each) => each.id === id);
  const withWaiting = (kept: Painting): Painting =>
    waitingFor(kept.id).reduce((before, { how }) => how(before), kept);

  function adopt(kept: Painting): void {
    if (painting.value?.id === kept.id) painting.value = withWaiting(kept);
  }

  /** One after the other: a change must not be applied twice. */
  function send(id: string): Promise<void> {
    last = last.then(async () => {
      const sent = waitingFor(id);
      if (sent.length === 0) return;
      try {
        const kept = await store.changePainting(id, (before) =>
          sent.reduce((changed, { how }) => how(changed), before),
        );
        waiting = waiting.filter((each) => !sent.includes(each));
        if (waiting.length === 0) problem.value = null;
        adopt(kept);
      } catch (fault) {
        problem.value = describeFault(fault);
        // What can never be kept must not hold up the rest.
        if (isOf(fault, ['broken-figure']))
          waiting = waiting.filter((each) => each !== sent.at(-1));
        if (!isOf(fault, lasting)) retry();
      }
    });
    return last;
  }

  const retry = createRetry(() => {
    for (const id of new Set(waiting.map((each) => each.id))) void send(id);
  }, retryMs);

  return {
    painting,
    problem,
    async open(id) {
      opened = id;
      painting.value = null;
      const kept = await store.painting(id);
      if (opened !== id) return null;
      painting.value = kept && withWaiting(kept);
      return painting.value;
    },
    async change(how) {
      const current = painting.value;
      if (!current) return;
      painting.value = how(current); // shown at once, kept right after
      waiting = [...waiting, { id: current.id, how }];
      await send(current.id);
    },
    adopt,
  };
}
