import { type ReadonlySignal, signal } from '@preact/signals';
import { hashOf, type PaintingRoute, type Route, routeOf } from './route.ts';

export interface Router {
  readonly route: ReadonlySignal<Route>;
  /** The last place of a painting she was in, in this window: the way back from the paint box. */
  readonly cameFrom: ReadonlySignal<PaintingRoute | null>;
  go(route: Route): void;
  /** Goes there without leaving the present place in the way back. */
  replace(route: Route): void;
}

export function createRouter(window: Window): Router {
  const route = signal(routeOf(window.location.hash));
  const cameFrom = signal<PaintingRoute | null>(null);
  window.addEventListener('hashchange', () => {
    const leaving = route.value;
    if ('paintingId' in leaving) cameFrom.value = leaving;
    if (leaving.screen === 'start') cameFrom.value = null;
    route.value = routeOf(window.location.hash);
    window.scrollTo(0, 0);
  });
  return {
    route,
    cameFrom,
    go(to) {
      window.location.hash = hashOf(to);
    },
    replace(to) {
      window.location.replace(hashOf(to));
    },
  };
}
