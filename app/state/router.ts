import { type ReadonlySignal, signal } from '@preact/signals';

/** Where she is. Hash routes: they work on any static host, under any sub-path, offline. */
export type Route =
  | { readonly screen: 'start' }
  | { readonly screen: 'camera' }
  | { readonly screen: 'choose' }
  | { readonly screen: 'box' }
  | { readonly screen: 'about' }
  /** `what`: 'box', or the id of a painting, as what goes into a copy at first. */
  | { readonly screen: 'copies'; readonly what?: string }
  /** A paint of the box being measured from a photo. */
  | { readonly screen: 'measure'; readonly paintId: string }
  | PaintingRoute;

export interface PaintingRoute {
  readonly screen: PaintingScreen;
  readonly paintingId: string;
  /** An earlier session, where its record is asked for. */
  readonly sessionId?: string;
}

const paintingScreens = [
  'look',
  'sheet',
  'subject',
  'whites',
  'edges',
  'colours',
  'changes',
  'hues',
  'paints',
  'plan',
  'drawing',
  'plan-page',
  'chart',
  'easel',
  'record',
  'compare',
] as const;
export type PaintingScreen = (typeof paintingScreens)[number];

const plainScreens = ['camera', 'choose', 'box', 'about', 'copies'] as const;

const isPaintingScreen = (word: string): word is PaintingScreen =>
  (paintingScreens as readonly string[]).includes(word);

/** The route of a location hash; whatever is not known leads to the start. */
export function routeOf(hash: string): Route {
  const [place, id, screen, session] = hash.replace(/^#\/?/, '').split('/');
  if (place === 'box' && id && screen === 'measure') return { screen, paintId: id };
  if (place === 'copies' && id) return { screen: 'copies', what: id };
  const plain = plainScreens.find((screen) => screen === place);
  if (plain) return { screen: plain };
  if (place === 'painting' && id && screen && isPaintingScreen(screen))
    return { screen, paintingId: id, ...(session && { sessionId: session }) };
  return { screen: 'start' };
}

export function hashOf(route: Route): string {
  if (route.screen === 'start') return '#/';
  if (route.screen === 'measure') return `#/box/${route.paintId}/measure`;
  if (route.screen === 'copies' && route.what !== undefined) return `#/copies/${route.what}`;
  if (!('paintingId' in route)) return `#/${route.screen}`;
  const { paintingId, screen, sessionId } = route;
  return `#/painting/${paintingId}/${screen}${sessionId ? `/${sessionId}` : ''}`;
}

export const linkTo = (paintingId: string, screen: PaintingScreen): string =>
  hashOf({ screen, paintingId });

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
    const previous = route.value;
    if ('paintingId' in previous) cameFrom.value = previous;
    if (previous.screen === 'start') cameFrom.value = null;
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
