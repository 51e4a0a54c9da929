import { effect, type ReadonlySignal, signal } from '@preact/signals';

/** Whether the browser has promised to keep what is stored here. */
export interface StoragePromise {
  /** Null before it has answered, or where it can't be asked. */
  readonly promised: ReadonlySignal<boolean | null>;
}

interface Needs {
  /** Missing in old browsers and where the page is not trusted. */
  readonly storage: Pick<StorageManager, 'persist' | 'persisted'> | undefined;
  /** Something worth keeping is there: the first plan. */
  readonly planned: ReadonlySignal<unknown>;
}

/**
 * Without that promise a browser may clear a site when room gets short, or when it was not visited for
 * a week (W3C Storage; WebKit). Asked once a visit, after a painting has been planned: before, some
 * browsers refuse, and others would ask her about nothing.
 */
export function createStoragePromise({ storage, planned }: Needs): StoragePromise {
  const promised = signal<boolean | null>(null);
  let asked = false;
  /** A browser that does not answer has promised nothing. */
  const hear = async (answer: Promise<boolean> | undefined): Promise<void> => {
    promised.value = (await answer?.catch(() => false)) ?? promised.value;
  };

  void hear(storage?.persisted?.());
  effect(() => {
    if (!planned.value || asked) return;
    asked = true;
    if (promised.peek() !== true) void hear(storage?.persist?.());
  });
  return { promised };
}
