import { type ReadonlySignal, signal } from '@preact/signals';
import type { Moment } from '../../core/session/session-event.ts';
import { createRetry } from '../../storage/retry-later.ts';

/** Both clocks of the device, handed in so that tests can move them. */
export interface Clock {
  now(): Moment;
}

export function createClock(): Clock {
  const bootId = crypto.randomUUID();
  return { now: () => ({ wallMs: Date.now(), monoMs: performance.now(), bootId }) };
}

export interface ScreenWatch {
  /** Null while nothing is asked for; else whether the screen stays on. */
  readonly staysOn: ReadonlySignal<boolean | null>;
  hold(): void;
  release(): void;
}

/** Keeps the screen on where the browser can; asks again on coming back, as the lock is lost then. */
/** After so long it is asked for again, ms (own: a battery is plugged in within minutes). */
const usualAgainMs = 30_000;

export function createScreenWatch(
  document: Pick<Document, 'addEventListener' | 'visibilityState'>,
  navigator: Pick<Navigator, 'wakeLock'>,
  againMs = usualAgainMs,
): ScreenWatch {
  const staysOn = signal<boolean | null>(null);
  let wanted = false;
  let asking = false;
  let lock: WakeLockSentinel | null = null;

  /** The device may take it away in sight of her, as when its battery is low: then that is said. */
  function noticeLoss(which: WakeLockSentinel): void {
    if (lock !== which) return;
    lock = null;
    if (!wanted || document.visibilityState !== 'visible') return;
    staysOn.value = false;
    askLater();
  }

  const askLater = createRetry(() => {
    if (wanted && document.visibilityState === 'visible') void ask();
  }, againMs);

  async function ask(): Promise<void> {
    if (asking || lock) return;
    asking = true;
    try {
      const granted = await navigator.wakeLock.request('screen');
      if (!wanted) return void granted.release();
      lock = granted;
      granted.addEventListener('release', () => noticeLoss(granted));
      staysOn.value = true;
    } catch {
      staysOn.value = wanted ? false : null; // refused, or a browser without it: the screen says so
    } finally {
      asking = false;
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
