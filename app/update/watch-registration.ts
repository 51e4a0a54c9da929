export interface RegistrationNews {
  /** The service worker is active: its install, which keeps every file, went through. */
  readonly onActive: () => void;
  /** A newer version is installed and waits. */
  readonly onWaiting: () => void;
}

const watched = new WeakSet<ServiceWorkerRegistration>();

/** Reports the present state of a registration and every change after it; once per registration. */
export function watchRegistration(
  registration: ServiceWorkerRegistration,
  { onActive, onWaiting }: RegistrationNews,
): void {
  if (watched.has(registration)) return;
  watched.add(registration);

  function watch(worker: ServiceWorker | null): void {
    if (!worker) return;
    const report = () => {
      if (worker.state === 'activated') onActive();
      if (worker.state === 'installed' && registration.active) onWaiting();
    };
    worker.addEventListener('statechange', report);
    report();
  }

  registration.addEventListener('updatefound', () => watch(registration.installing));
  watch(registration.installing);
  watch(registration.waiting);
  watch(registration.active);
}
