import { expect, it, test, vi } from 'vitest';
import { createRouter, hashOf, type Route, routeOf } from '../../../app/state/router.ts';

it('measuring a paint has a place of its own under the paint box', () => {
  const route = { screen: 'measure', paintId: 'pb29-ultramarine-blue' } as const;
  expect(hashOf(route)).toBe('#/box/pb29-ultramarine-blue/measure');
  expect(routeOf(hashOf(route))).toEqual(route);
  expect(routeOf('#/box')).toEqual({ screen: 'box' });
  expect(routeOf('#/box/pb29-ultramarine-blue')).toEqual({ screen: 'box' });
});

it('every place has an address of its own that leads back to it', () => {
  const routes: Route[] = [
    { screen: 'start' },
    { screen: 'camera' },
    { screen: 'choose' },
    { screen: 'box' },
    { screen: 'about' },
    { screen: 'copies' },
    { screen: 'copies', what: 'box' },
    { screen: 'easel', paintingId: 'a' },
    { screen: 'plan-page', paintingId: 'b' },
  ];
  for (const route of routes) expect(routeOf(hashOf(route))).toEqual(route);
  expect(new Set(routes.map(hashOf)).size).toBe(routes.length);
});

it.each([
  '',
  '#',
  '#/nowhere',
  '#/painting',
  '#/painting/a',
  '#/painting/a/kitchen',
  '#/painting//plan',
  '#/gallery/a/plan',
])('an address that leads nowhere leads to the start: %j', (hash) => {
  expect(routeOf(hash)).toEqual({ screen: 'start' });
});

/** A window with an address and a place on its page; each new address is told as a browser does. */
function madeWindow(hash = '') {
  const scrollTo = vi.fn();
  const visited: string[] = [];
  const opened = Object.assign(new EventTarget(), {
    scrollTo,
    location: {
      get hash() {
        return hash;
      },
      set hash(next: string) {
        visited.push(next);
        change(next);
      },
      replace: (next: string) => change(next),
    },
  });
  function change(next: string): void {
    hash = next;
    opened.dispatchEvent(new Event('hashchange'));
  }
  return { window: opened as unknown as Window, scrollTo, visited };
}

const plan: Route = { screen: 'plan', paintingId: 'a' };

test('it begins where the address says, without moving the page', () => {
  const { window, scrollTo } = madeWindow('#/painting/a/plan');
  const router = createRouter(window);
  expect(router.route.value).toEqual(plan);
  expect(router.cameFrom.value).toBeNull();
  expect(scrollTo).not.toHaveBeenCalled();
});

test('every screen begins at its top, left edge', () => {
  const { window, scrollTo, visited } = madeWindow();
  const router = createRouter(window);
  router.go(plan);
  expect(router.route.value).toEqual(plan);
  expect(scrollTo.mock.calls).toEqual([[0, 0]]);
  router.replace({ screen: 'look', paintingId: 'a' });
  expect(router.route.value).toEqual({ screen: 'look', paintingId: 'a' });
  expect(scrollTo.mock.calls).toEqual([
    [0, 0],
    [0, 0],
  ]);
  expect(visited).toEqual(['#/painting/a/plan']); // what replaces is not in the way back
});

test('the way back from the paint box is the last place of a painting, until the start is left', () => {
  const { window } = madeWindow('#/painting/a/plan');
  const router = createRouter(window);
  router.go({ screen: 'box' });
  expect(router.cameFrom.value).toEqual(plan);
  router.go({ screen: 'measure', paintId: 'pb29-ultramarine-blue' });
  router.go({ screen: 'box' });
  expect(router.cameFrom.value).toEqual(plan);
  router.go({ screen: 'start' });
  router.go({ screen: 'box' });
  expect(router.cameFrom.value).toBeNull();
});
