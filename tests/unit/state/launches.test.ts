import { signal } from '@preact/signals';
import { expect, test, vi } from 'vitest';
import { takeLaunches } from '../../../app/state/launches.ts';
import type { PaintingCard } from '../../../app/state/painting/shelf.ts';
import { type Route, routeOf } from '../../../app/state/router.ts';

const meadow: PaintingCard = {
  id: 'meadow',
  title: 'Meadow',
  picture: '',
  place: '',
  stage: 'easel',
};
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

/** A window that was loaded with a hash; its session storage outlives it. */
function opened(
  hash: string,
  kept = new Map<string, string>(),
  last: PaintingCard | null = meadow,
  mode = 'standalone',
) {
  const location = {
    hash,
    replace: vi.fn((to: string) => {
      location.hash = to;
      route.value = routeOf(to);
    }),
  };
  const route = signal<Route>(routeOf(hash));
  const goOn = vi.fn();
  const replace = vi.fn();
  const shelf = { refresh: vi.fn(async () => {}), last: signal(last) };
  const window = Object.assign(new EventTarget(), {
    location,
    matchMedia: (query: string) => ({ matches: query === `(display-mode: ${mode})` }),
    sessionStorage: {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, value: string) => kept.set(name, value),
      removeItem: (name: string) => kept.delete(name),
    },
  });
  takeLaunches({ window: window as never, router: { route, replace }, shelf, goOn });
  const go = (to: string): void => {
    location.hash = to;
    route.value = routeOf(to);
    window.dispatchEvent(new Event('hashchange'));
  };
  return { location, goOn, replace, go, kept };
}

const easel = '#/painting/meadow/easel';

test('the shortcut goes on, at the start and in a window that is open', async () => {
  const started = opened('#/go-on');
  await settled();
  expect(started.goOn).toHaveBeenCalledExactlyOnceWith(meadow);
  const open = opened('#/box');
  await settled();
  expect(open.goOn).not.toHaveBeenCalled();
  open.go('#/go-on');
  await settled();
  expect(open.goOn).toHaveBeenCalledOnce();
});

test('with nothing to go on with it leads to the first screen', async () => {
  const { goOn, replace } = opened('#/go-on', new Map(), null);
  await settled();
  expect(goOn).not.toHaveBeenCalled();
  expect(replace).toHaveBeenCalledExactlyOnceWith({ screen: 'start' });
});

test('started once more at the easel, the window comes back to it', () => {
  const { kept } = opened(easel);
  const again = opened('', kept);
  expect(again.location.replace).toHaveBeenCalledExactlyOnceWith(easel);
  expect(opened('', kept).location.hash).toBe(easel); // and again after that
});

test('in a tab of the browser the first screen is the first screen', () => {
  const { kept } = opened(easel);
  expect(opened('', kept, meadow, 'browser').location.replace).not.toHaveBeenCalled();
});

test('left by a way of hers, it is not brought back', () => {
  const open = opened(easel);
  open.go('#/');
  expect(opened('', open.kept).location.replace).not.toHaveBeenCalled();
  expect(opened('#/camera', opened(easel).kept).location.replace).not.toHaveBeenCalled();
});

test('where storage is shut off it starts all the same', async () => {
  const window = Object.defineProperty(
    Object.assign(new EventTarget(), { location: { hash: '#/go-on' } }),
    'sessionStorage',
    {
      get() {
        throw new DOMException('', 'SecurityError');
      },
    },
  );
  const goOn = vi.fn();
  takeLaunches({
    window: window as never,
    router: { route: signal(routeOf('')), replace: () => {} },
    shelf: { refresh: async () => {}, last: signal(meadow) },
    goOn,
  });
  await settled();
  expect(goOn).toHaveBeenCalledOnce();
});
