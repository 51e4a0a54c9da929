import { type ReadonlySignal, signal } from '@preact/signals';

/** Of several windows that show one session only one takes what she taps; the others follow it. */
export interface SessionLock {
  /** Whether what she taps here counts. Where a browser can't tell, every window is in charge. */
  readonly inCharge: ReadonlySignal<boolean>;
  /** Asks for a session, and waits for its turn while another window has it. */
  ask(sessionId: string): void;
  /** Takes it from the other window. */
  takeOver(): void;
  release(): void;
  /** Something of the session was kept: the other windows are told. */
  kept(): void;
}

interface Windows {
  /** Missing in old browsers and where the page is not trusted. */
  readonly locks?: Pick<LockManager, 'request'> | undefined;
  readonly channel?: Pick<BroadcastChannel, 'postMessage' | 'onmessage'> | undefined;
  /** Another window kept something of the session asked for, or has handed it over. */
  readonly onNews: () => void;
}

const nameOf = (sessionId: string): string => `session ${sessionId}`;

/** Whether any window has a session; false where a browser can't tell. */
export async function sessionAnywhere(
  locks: Pick<LockManager, 'query'> | undefined,
): Promise<boolean> {
  const held = (await locks?.query())?.held ?? [];
  return held.some(({ name }) => name?.startsWith(nameOf('')));
}

/** By Web Locks (W3C): a lock ends with its window, however that ends. */
export function createSessionLock({ locks, channel, onNews }: Windows): SessionLock {
  const inCharge = signal(true);
  let asked: { readonly id: string; readonly stop: AbortController } | null = null;
  let letGo: (() => void) | null = null;

  if (channel)
    channel.onmessage = ({ data }: MessageEvent<unknown>) => {
      if (data === asked?.id && !inCharge.value) onNews();
    };

  /** Held until it is released or taken away. */
  function hold(mine: NonNullable<typeof asked>): Promise<void> | undefined {
    if (asked !== mine) return undefined;
    if (!inCharge.value) onNews();
    inCharge.value = true;
    return new Promise((done) => {
      letGo = done;
    });
  }

  function request(mine: NonNullable<typeof asked>, options: LockOptions): void {
    if (!locks) return;
    const name = nameOf(mine.id);
    locks
      .request(name, options, (lock) => {
        if (lock) return hold(mine);
        if (asked === mine) wait(mine);
        return undefined;
      })
      .catch(() => {
        // Taken over by another window, or no longer waited for.
        if (asked === mine && inCharge.value) wait(mine);
      });
  }

  function wait(mine: NonNullable<typeof asked>): void {
    inCharge.value = false;
    request(mine, { signal: mine.stop.signal });
  }

  function release(): void {
    asked?.stop.abort();
    asked = null;
    letGo?.();
    letGo = null;
  }

  function begin(id: string, options: LockOptions): void {
    release();
    asked = { id, stop: new AbortController() };
    request(asked, options);
  }

  return {
    inCharge,
    ask(id) {
      if (asked?.id === id) return;
      inCharge.value = true;
      begin(id, { ifAvailable: true });
    },
    takeOver() {
      if (asked && !inCharge.value) begin(asked.id, { steal: true });
    },
    release,
    kept() {
      if (asked) channel?.postMessage(asked.id);
    },
  };
}

/** Where there is no other window. */
export const onlyWindow: SessionLock = createSessionLock({ onNews: () => {} });
