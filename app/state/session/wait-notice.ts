import { type ReadonlySignal, signal } from '@preact/signals';
import type { Reach } from '../../core/words/session/reach-words.ts';

/** A notice of the device at the end of a wait, while another app is in front or the screen is off. */
export interface WaitNotice {
  readonly state: ReadonlySignal<Reach['notice']>;
  /** Only from a tap of hers. */
  ask(): Promise<void>;
  /** Only where she does not see the page; nothing where it is not allowed. */
  show(title: string, words: string): Promise<void>;
  /** She is back: a notice that still hangs there is taken away. */
  clear(): Promise<void>;
}

interface NoticeWindow {
  readonly Notification?: Pick<typeof Notification, 'permission' | 'requestPermission'>;
  readonly navigator: {
    readonly serviceWorker?: Pick<ServiceWorkerContainer, 'getRegistration'>;
  };
  readonly document: Pick<Document, 'visibilityState' | 'addEventListener'>;
}

/** One notice at a time: a later one takes its place. */
const tag = 'firstwash wait';

const words: Record<NotificationPermission, Reach['notice']> = {
  default: 'unasked',
  granted: 'granted',
  denied: 'denied',
};

/** By the service worker's registration (Notifications, WHATWG): phones show no others. */
export function createWaitNotice(window: NoticeWindow): WaitNotice {
  const { Notification, document } = window;
  const { serviceWorker } = window.navigator;
  const look = (): Reach['notice'] =>
    Notification && serviceWorker ? words[Notification.permission] : 'missing';
  const state = signal(look());

  async function clear(): Promise<void> {
    const registration = await serviceWorker?.getRegistration();
    for (const each of (await registration?.getNotifications?.({ tag })) ?? []) each.close();
  }

  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible') return;
    if (state.value !== 'failed') state.value = look(); // she may have come from the settings
    void clear().catch(() => undefined);
  });

  return {
    state,
    async ask() {
      if (state.value !== 'unasked') return;
      try {
        await Notification?.requestPermission();
        state.value = look();
      } catch {
        state.value = 'missing';
      }
    },
    async show(title, body) {
      if (look() !== 'granted' || document.visibilityState === 'visible') return;
      try {
        const registration = await serviceWorker?.getRegistration();
        if (!registration) throw new TypeError('no service worker');
        await registration.showNotification(title, { body, tag, requireInteraction: true });
      } catch {
        state.value = 'failed';
      }
    },
    clear,
  };
}
