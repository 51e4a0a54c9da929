import { signal } from '@preact/signals';
import type { Store } from '../../../app/storage/open-store.ts';

/** Settings in a map, as the store has them in a table. */
export const keptSettings = (
  kept: Map<string, unknown> = new Map(),
): Pick<Store, 'setting' | 'keepSetting' | 'changeSetting' | 'unkeptSettings'> => ({
  setting: async (name) => structuredClone(kept.get(name)) ?? null,
  keepSetting: async (name, value) => void kept.set(name, structuredClone(value)),
  changeSetting: async (name, how) => {
    const value = how(structuredClone(kept.get(name)) ?? null);
    kept.set(name, structuredClone(value));
    return value;
  },
  unkeptSettings: signal(new Map()),
});
