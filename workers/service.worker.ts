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

// The first visit is under control at once, so it is ready for offline use without a reload.
clientsClaim();

// A new version waits until the painter says so.
self.addEventListener('message', (event) => {
  if (event.data?.kind === 'take-over') void self.skipWaiting();
});
