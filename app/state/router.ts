import { type ReadonlySignal, signal } from '@preact/signals';
import { hashOf, type Route, routeOf } from './route.ts';

export interface Router {
  readonly route: ReadonlySignal<Route>;
  go(route: Route): void;
  /** Goes there without leaving the present place in the way back. */
  replace(route: Route): void;
}

export function createRouter(window: Window): Router {
  const route = signal(routeOf(window.location.hash));
  window.addEventListener('hashchange', () => {
    route.value = routeOf(window.location.hash);
    window.scrollTo(0, 0);
  });
  return {
    route,
    go(to) {
      window.location.hash = hashOf(to);
    },
    replace(to) {
      window.location.replace(hashOf(to));
    },
  };
}
