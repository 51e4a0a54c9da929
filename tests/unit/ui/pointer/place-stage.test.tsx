import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { PlaceStage } from '../../../../app/ui/pointer/place-stage.tsx';
import { type BareElement, drawBare } from '../../../support/ui/bare-page.ts';

// The stage made here is 100 x 100 px; the cross goes in steps of 1 %, with Shift of 5 % (own).
let places: Point[];
let drawn: ReturnType<typeof drawBare>;
let stage: BareElement;
beforeEach(() => {
  places = [];
  drawn = drawBare(<PlaceStage label="Touch." onPlace={(place) => places.push(place)} />);
  [stage] = drawn.body.all('div') as [BareElement];
});
afterEach(() => drawn.leave());
const key = (name: string, more: object = {}): boolean =>
  stage.tell('keydown', { key: name, shiftKey: false, ...more }).defaultPrevented;
const hasCross = async (): Promise<boolean> => {
  await drawn.settled();
  return drawn.body.all('span').length > 0;
};

test('a touch tells its place, a click that no finger made does not', () => {
  stage.tell('click', { detail: 1, clientX: 25, clientY: 80 });
  stage.tell('click', { detail: 0, clientX: 0, clientY: 0 });
  expect(places).toEqual([[0.25, 0.8]]);
});

test('arrows move a cross from the middle, Enter and space touch there', async () => {
  expect(await hasCross()).toBe(false);
  expect([key('ArrowRight'), key('ArrowDown', { shiftKey: true }), key('Enter')]).toEqual([
    ...[true, true, true],
  ]);
  expect(await hasCross()).toBe(true);
  expect(places[0]).toEqual([expect.closeTo(0.51, 9), expect.closeTo(0.55, 9)]);
  stage.tell('blur');
  expect(await hasCross()).toBe(false);
  expect(key(' ')).toBe(true);
  expect(places[1]).toEqual([0.5, 0.5]);
  expect([key('x'), key('ArrowLeft', { metaKey: true })]).toEqual([false, false]);
});

test('a touch takes the cross away', async () => {
  key('ArrowUp');
  stage.tell('click', { detail: 1, clientX: 25, clientY: 80 });
  expect(await hasCross()).toBe(false);
});
