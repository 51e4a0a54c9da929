import { computed, type ReadonlySignal, signal } from '@preact/signals';

interface RegistrationNews {
  /** The service worker is active: its install, which keeps every file, went through. */
  readonly onActive: () => void;
  /** A newer version is installed and waits. */
  readonly onWaiting: () => void;
  /** The very first install was cut short. */
  readonly onCut: () => void;
}

const watched = new WeakSet<ServiceWorkerRegistration>();

/** Reports the present state of a registration and every change after it; once per registration. */
function watchRegistration(
  registration: ServiceWorkerRegistration,
  { onActive, onWaiting, onCut }: RegistrationNews,
): void {
  if (watched.has(registration)) return;
  watched.add(registration);

  function watch(worker: ServiceWorker | null): void {
    if (!worker) return;
    const report = () => {
      if (worker.state === 'activated') onActive();
      if (worker.state === 'installed' && registration.active) onWaiting();
      if (worker.state === 'redundant' && !registration.active) onCut();
    };
    worker.addEventListener('statechange', report);
    report();
  }

  registration.addEventListener('updatefound', () => watch(registration.installing));
  watch(registration.installing);
  watch(registration.waiting);
  watch(registration.active);
}

export interface Updates {
  /** True once every file of the app is kept on the device, so that it starts without a network. */
  readonly offlineReady: ReadonlySignal<boolean>;
  /** True while a newer version waits to be taken; never while a session runs at the easel. */
  readonly updateReady: ReadonlySignal<boolean>;
  /** True once she wanted it while a session runs in another window: it is not taken then. */
  readonly waitsForWindow: ReadonlySignal<boolean>;
  /** Registers the service worker. Call once, after the first screen is drawn. */
  start(): void;
  /** The painter wants the newer version: saves what is under way, then reloads once. */
  accept(): Promise<void>;
}

interface UpdateNeeds {
  /** Resolves when all writes under way are done. */
  readonly settled: () => Promise<void>;
  /** True while a session runs: nothing is offered then. */
  readonly inSession: ReadonlySignal<boolean>;
  /** Whether a session runs in any window: an update may change the database under it. */
  readonly inSessionAnywhere?: () => Promise<boolean>;
  /** A first visit cut short is tried again after so long, ms, then after twice as long ... */
  readonly retryMs?: number;
}

/** A first visit is tried again at least so often, ms (own: a network may be back at any time). */
const longestRetryMs = 300_000;

/**
 * A newer version is offered, never forced. A browser without service workers (some private windows,
 * plain http) leaves both signals false and the app works online.
 */
export function createUpdates(needs: UpdateNeeds): Updates {
  const { settled, inSession, inSessionAnywhere = async () => false } = needs;
  const waitsForWindow = signal(false);
  let retryMs = needs.retryMs ?? 10_000;
  let retrying: ReturnType<typeof setTimeout> | undefined;
  const offlineReady = signal(false);
  const newer = signal(false);
  const updateReady = computed(() => newer.value && !inSession.value);
  let registration: ServiceWorkerRegistration | undefined;
  let accepted = false;
  let reloaded = false;

  function reloadOnce(): void {
    if (reloaded) return;
    reloaded = true;
    location.reload();
  }

  const letTakeOver = (): void => registration?.waiting?.postMessage({ kind: 'take-over' });

  function start(): void {
    const container: ServiceWorkerContainer | undefined = navigator.serviceWorker;
    if (!container || !import.meta.env.PROD) return; // development serves no service worker
    let controlled = container.controller !== null;
    container.addEventListener('controllerchange', () => {
      if (accepted) reloadOnce();
      // Taken over by another window's consent: this window keeps what is typed in it and is asked.
      else if (controlled) newer.value = true;
      controlled = true;
    });

    /** While she stays on the page nothing else would try again. */
    function retryLater(): void {
      clearTimeout(retrying);
      retrying = setTimeout(() => void register(), retryMs);
      retryMs = Math.min(longestRetryMs, 2 * retryMs);
    }

    async function register(): Promise<void> {
      clearTimeout(retrying);
      try {
        registration = await container?.register('./service-worker.js', { scope: './' });
        if (registration)
          watchRegistration(registration, {
            onActive: () => {
              offlineReady.value = true;
            },
            onWaiting: () => {
              newer.value = true;
              // The one she agreed to may have been replaced meanwhile by a still newer one.
              if (accepted) letTakeOver();
            },
            onCut: retryLater,
          });
      } catch (fault) {
        console.info('Not kept for offline use, works online:', fault);
        retryLater();
      }
    }

    /** An installed app can stay open for days: coming back to it is the time to look. */
    async function lookAgain(): Promise<void> {
      if (document.visibilityState !== 'visible' || inSession.value) return;
      if (!registration?.active) return register(); // a failed first visit is tried again
      try {
        await registration.update();
      } catch (fault) {
        console.info('No newer version could be looked for:', fault);
      }
    }

    document.addEventListener('visibilitychange', () => void lookAgain());
    globalThis.addEventListener?.('online', () => {
      if (!offlineReady.value) void register();
    });
    void register();
  }

  async function accept(): Promise<void> {
    if (!updateReady.value) return;
    await settled();
    waitsForWindow.value = await inSessionAnywhere();
    if (inSession.value || waitsForWindow.value) return;
    accepted = true;
    if (registration?.waiting) letTakeOver();
    else reloadOnce(); // another window has already let it take over
  }

  return { offlineReady, updateReady, waitsForWindow, start, accept };
}
