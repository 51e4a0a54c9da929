import { expect, it } from 'vitest';
import { hashOf, routeOf } from '../../../app/state/route.ts';

it('measuring a paint has a place of its own under the paint box', () => {
  const route = { screen: 'measure', paintId: 'pb29-ultramarine-blue' } as const;
  expect(hashOf(route)).toBe('#/box/pb29-ultramarine-blue/measure');
  expect(routeOf(hashOf(route))).toEqual(route);
  expect(routeOf('#/box')).toEqual({ screen: 'box' });
  expect(routeOf('#/box/pb29-ultramarine-blue')).toEqual({ screen: 'box' });
});
