import { type ReadonlySignal, signal } from '@preact/signals';
import { type KeptAir, parseKeptAir, usualAir } from '../core/drying/conditions.ts';
import type { Store } from '../storage/open-store.ts';

/** The air she paints in and her paper, as set last, for plans and sessions to come. */
export interface OwnAirState {
  readonly air: ReadonlySignal<KeptAir>;
  /** Whether she has ever set them. */
  readonly isHers: ReadonlySignal<boolean>;
  /** Settles when what was kept is there. */
  readonly ready: Promise<void>;
  /** Rejects where it can't be kept; it counts all the same. */
  set(air: Pick<KeptAir, 'weather' | 'paper'>): Promise<void>;
}

const settingName = 'air and paper';

export function createOwnAir(store: Pick<Store, 'setting' | 'keepSetting'>): OwnAirState {
  const air = signal(usualAir);
  const isHers = signal(false);
  const take = (kept: KeptAir): void => {
    air.value = kept;
    isHers.value = true;
  };
  // Her settings are no reason to keep her from painting: what can't be read counts as usual.
  const ready = store.setting(settingName).then(
    (value) => {
      const kept = parseKeptAir(value);
      if (kept) take(kept);
    },
    () => {},
  );
  return {
    air,
    isHers,
    ready,
    async set({ weather, paper }) {
      await ready;
      take({ schema: 1, weather, paper });
      await store.keepSetting(settingName, air.value);
    },
  };
}
