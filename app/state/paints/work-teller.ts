import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { describeFault } from '../describe-fault.ts';

export interface WorkTeller {
  /** What is being done, in words; null while nothing is. */
  readonly work: ReadonlySignal<string | null>;
  /** A sentence for the painter; null while all is well. */
  readonly problem: Signal<string | null>;
  /** One thing after the other: what is begun later ends what was begun before. */
  run(words: string, what: (signal: AbortSignal) => Promise<void>): Promise<void>;
  stop(): void;
}

/** Work in the worker that is told in words, and ended by the next. */
export function createWorkTeller(): WorkTeller {
  const work = signal<string | null>(null);
  const problem = signal<string | null>(null);
  let controller = new AbortController();
  return {
    work,
    problem,
    async run(words, what) {
      controller.abort();
      controller = new AbortController();
      const { signal: mine } = controller;
      work.value = words;
      problem.value = null;
      try {
        await what(mine);
      } catch (fault) {
        if (!mine.aborted) problem.value = describeFault(fault);
      } finally {
        if (!mine.aborted) work.value = null;
      }
    },
    stop() {
      controller.abort();
      work.value = null;
      problem.value = null;
    },
  };
}
