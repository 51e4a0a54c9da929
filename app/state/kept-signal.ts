import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Store } from '../storage/open-store.ts';

export type SettingStore = Pick<Store, 'setting' | 'keepSetting' | 'unkeptSettings'>;

/** A value of the screens that is kept on the device, the same for all paintings. */
export interface KeptSignal<T> {
  readonly current: ReadonlySignal<T>;
  /** Settles when what was kept is there, or can't be read; never rejects. */
  readonly ready: Promise<void>;
  /** Why the value is not kept, in words; null as soon as it is. */
  readonly problem: ReadonlySignal<string | null>;
  /** Shows the value at once and keeps it right after. Rejects where it can't be kept; it counts all the same, and is tried again. */
  set(value: T): Promise<void>;
  /** Takes what is kept by now, as when it was first read. Never rejects. */
  readAgain(): Promise<void>;
}

/**
 * Brings the setting of that name. What a browser gives back may be of another version, or spoilt:
 * `parse` answers what counts from then on, given what was kept (null where nothing was) and what
 * counts by now: `initial`, or what was set before the store answered. The store itself says where
 * it can't be read; `initial` counts then.
 */
export function keptSignal<T>(
  store: SettingStore,
  name: string,
  parse: (kept: unknown, current: T) => T,
  initial: T,
): KeptSignal<T> {
  const current = signal(initial);
  const read = (): Promise<void> =>
    store.setting(name).then(
      (kept) => {
        current.value = parse(kept, current.peek());
      },
      () => {},
    );
  const ready = read();
  return {
    current,
    ready,
    problem: computed(() => store.unkeptSettings.value.get(name)?.message ?? null),
    readAgain: read,
    set(value) {
      current.value = value;
      return store.keepSetting(name, value);
    },
  };
}
