import { clientsClaim } from 'workbox-core';
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  type PrecacheEntry,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { shellAddress } from './shell-address.ts';

declare const self: ServiceWorkerGlobalScope & {
  /** Put in by the build: every file of the app. */
  __WB_MANIFEST: (PrecacheEntry | string)[];
};

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();

const shell = createHandlerBoundToURL('index.html');
registerRoute(
  new NavigationRoute(async (options) => {
    const address = shellAddress(options.url, new URL(self.registration.scope));
    return address ? Response.redirect(address.href) : shell(options);
  }),
);

/** What a share sheet hands over waits here for a window (app/state/arriving-files.ts). */
const sharedCache = 'firstwash shared';
const inScope = (path: string): URL => new URL(path, self.registration.scope);

registerRoute(
  ({ url }) => url.pathname === inScope('share').pathname,
  async ({ request }) => {
    const files = (await request.formData()).getAll('files');
    const cache = await caches.open(sharedCache);
    for (const [i, file] of files.entries()) {
      if (typeof file === 'string') continue;
      const headers = { 'content-type': file.type, 'x-name': encodeURIComponent(file.name) };
      await cache.put(inScope(`shared-${i}`), new Response(file, { headers }));
    }
    return Response.redirect(inScope('./').href, 303);
  },
  'POST',
);

// The first visit is under control at once, so it is ready for offline use without a reload.
clientsClaim();

// A new version waits until the painter says so.
self.addEventListener('message', (event) => {
  if (event.data?.kind === 'take-over') void self.skipWaiting();
});

// A notice that the sheet can be looked at leads back to the window that showed it, or to a new one.
self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  event.waitUntil(
    self.clients
      .matchAll({ type: 'window', includeUncontrolled: true })
      .then(([open]) => (open ? open.focus() : self.clients.openWindow(self.registration.scope))),
  );
});
