import type { ReadonlySignal } from '@preact/signals';
import { keptSignal, type SettingStore } from './kept-signal.ts';

/** What she is told once and not again. */
export interface ToldOnce {
  /** What she has been told; null until that is known, and nothing is told. */
  readonly told: ReadonlySignal<readonly string[] | null>;
  /** She has seen it. */
  tell(what: string): void;
}

/** So many are remembered: one of them for every painting (own). */
const mostKept = 200;

export function createToldOnce(store: SettingStore): ToldOnce {
  const kept = keptSignal<readonly string[] | null>(
    store,
    'told once',
    (value, before) => [
      ...(Array.isArray(value) ? value.filter((each) => typeof each === 'string') : []),
      ...(before ?? []),
    ],
    null,
  );
  return {
    told: kept.current,
    tell(what) {
      const before = kept.current.peek() ?? [];
      if (before.includes(what)) return;
      kept.set([...before, what].slice(-mostKept)).catch(() => undefined); // then it is told again
    },
  };
}
