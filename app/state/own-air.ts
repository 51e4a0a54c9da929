import { computed, type ReadonlySignal } from '@preact/signals';
import { type KeptAir, parseKeptAir, usualAir } from '../core/drying/conditions.ts';
import { keptSignal, type SettingStore } from './kept-signal.ts';

/** The air she paints in and her paper, as set last, for plans and sessions to come. */
export interface OwnAirState {
  readonly air: ReadonlySignal<KeptAir>;
  /** Whether she has ever set them. */
  readonly isHers: ReadonlySignal<boolean>;
  /** Settles when what was kept is there. */
  readonly ready: Promise<void>;
  /** Why they are not kept, in words; null as soon as they are. */
  readonly problem: ReadonlySignal<string | null>;
  /** Rejects where it can't be kept; it counts all the same, and is tried again. */
  set(air: Pick<KeptAir, 'weather' | 'paper'>): Promise<void>;
  /** Takes what is kept by now: a copy was brought back. */
  readAgain(): Promise<void>;
}

export function createOwnAir(store: SettingStore): OwnAirState {
  // Her settings are no reason to keep her from painting: what can't be read counts as usual.
  const hers = keptSignal<KeptAir | null>(store, 'air and paper', parseKeptAir, null);
  return {
    air: computed(() => hers.current.value ?? usualAir),
    isHers: computed(() => hers.current.value !== null),
    ready: hers.ready,
    problem: hers.problem,
    readAgain: hers.readAgain,
    async set({ weather, paper }) {
      await hers.ready;
      await hers.set({ schema: 1, weather, paper });
    },
  };
}
