import { expect, test } from 'vitest';
import { mergeBoxes } from '../../../../app/core/paint/merge-boxes.ts';
import { emptyBox, type OwnBox } from '../../../../app/core/paint/own-box.ts';
import type { Paint } from '../../../../app/core/paint/paint.ts';

const paint = (id: string, revision: number): Paint => ({
  id,
  revision,
  name: `${id} ${revision}`,
  ci: ['PB29'],
  K: [],
  S: [],
  properties: {
    transparency: null,
    staining: null,
    granulation: null,
    lightfastness: null,
    caution: null,
  },
});
const box = (how: Partial<OwnBox>): OwnBox => ({ ...emptyBox, ...how });
const lesson = (event: string, at: number) => ({
  event,
  session: 's',
  paint: 'p',
  name: 'p',
  seems: 'weaker' as const,
  planned: 1,
  at,
});

test('what she owns of either box she owns; where one is not ticked the other counts', () => {
  const [one, other] = [box({ owned: ['a', 'b'] }), box({ owned: ['b', 'c'] })];
  expect(mergeBoxes(one, other).owned).toEqual(['a', 'b', 'c']);
  expect(mergeBoxes(emptyBox, other).owned).toEqual(['b', 'c']);
  expect(mergeBoxes(one, emptyBox).owned).toEqual(['a', 'b']);
  expect(mergeBoxes(emptyBox, emptyBox)).toEqual(emptyBox);
});

test('a paint of her own counts in its latest form, and what she took out stays out', () => {
  const here = box({ paints: [paint('x', 1), paint('x', 2), paint('y', 1)], gone: ['y'] });
  const arriving = box({ paints: [paint('x', 1), paint('x', 3), paint('z', 1)], gone: ['z', 'x'] });
  const merged = mergeBoxes(here, arriving);
  expect(merged.paints.map(({ name }) => name)).toEqual(['x 1', 'x 2', 'y 1', 'x 3', 'z 1']);
  expect(merged.gone).toEqual(['y', 'z']);
});

test('what scraps told counts once, in its order', () => {
  const here = box({ strengthLessons: [lesson('e1', 1), lesson('e3', 3)] });
  const arriving = box({ strengthLessons: [lesson('e1', 1), lesson('e2', 2)] });
  expect(mergeBoxes(here, arriving).strengthLessons?.map(({ event }) => event)).toEqual([
    ...['e1', 'e2', 'e3'],
  ]);
  expect(mergeBoxes(here, here)).toEqual(here);
});
