import { type ReadonlySignal, signal } from '@preact/signals';

export interface ScreenWatch {
  /** Null while nothing is asked for; else whether the screen stays on. */
  readonly staysOn: ReadonlySignal<boolean | null>;
  hold(): void;
  release(): void;
}

/** Keeps the screen on where the browser can; asks again on coming back, as the lock is lost then. */
export function createScreenWatch(document: Document, navigator: Navigator): ScreenWatch {
  const staysOn = signal<boolean | null>(null);
  let wanted = false;
  let lock: WakeLockSentinel | null = null;

  async function ask(): Promise<void> {
    try {
      const granted = await navigator.wakeLock.request('screen');
      if (!wanted) return void granted.release();
      lock = granted;
      staysOn.value = true;
    } catch {
      staysOn.value = wanted ? false : null; // refused, or a browser without it: the screen says so
    }
  }

  document.addEventListener('visibilitychange', () => {
    if (wanted && document.visibilityState === 'visible') void ask();
  });
  return {
    staysOn,
    hold() {
      if (wanted) return;
      wanted = true;
      void ask();
    },
    release() {
      wanted = false;
      staysOn.value = null;
      void lock?.release();
      lock = null;
    },
  };
}
