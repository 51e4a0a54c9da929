import { signal } from '@preact/signals';
import { afterEach, expect, test } from 'vitest';
import { wholePicture, type Zoom } from '../../../../app/ui/picture/picture-zoom.ts';
import { useZoomGesture, useZoomKeys } from '../../../../app/ui/pointer/use-zoom-gesture.ts';
import { runHook } from '../../../support/ui/run-hook.ts';

// A frame of 400 x 300 px with a picture as wide as high, shown 300 px large in it. 8 px are no move, 40 px and 320 ms
// apart two taps are one double tap (own).
const ratio = 1;

interface Told {
  captured: number[];
  prevented: number;
  stopped: number;
}

function made(begin: Zoom = wholePicture) {
  const [zoom, held] = [signal(begin), signal(false)];
  const told: Told = { captured: [], prevented: 0, stopped: 0 };
  const stage = {
    ...{ clientWidth: 400, clientHeight: 300 },
    getBoundingClientRect: () => ({ left: 20, top: 10, width: 400, height: 300 }),
    setPointerCapture: (id: number) => told.captured.push(id),
  };
  const gesture = runHook(() => useZoomGesture({ zoom, ratio, held }));
  hooks.push(gesture);
  /** An event at a place of the frame, px. */
  const event = (x: number, y: number, more: object = {}) =>
    ({
      ...{
        currentTarget: stage,
        target: stage,
        clientX: 20 + x,
        clientY: 10 + y,
        button: 0,
        pointerId: 1,
      },
      preventDefault: () => told.prevented++,
      stopPropagation: () => told.stopped++,
      ...more,
    }) as never;
  const handlers = () => gesture.current;
  const tap = (x: number, y: number, timeStamp: number): void => {
    handlers().onPointerDown(event(x, y, { timeStamp }));
    handlers().onPointerUp(event(x, y, { timeStamp }));
  };
  return { zoom, held, told, event, handlers, tap };
}
const hooks: { leave(): void }[] = [];
afterEach(() => {
  for (const hook of hooks.splice(0)) hook.leave();
});
const near = (scale: number, x: number, y: number) => ({
  scale: expect.closeTo(scale, 6),
  centre: [expect.closeTo(x, 6), expect.closeTo(y, 6)],
});

test('a finger takes the picture along once it has moved 8 px, and lets it lie where it leaves', () => {
  const { zoom, held, told, event, handlers } = made({ scale: 4, centre: [0.5, 0.5] });
  handlers().onPointerDown(event(200, 150));
  handlers().onPointerMove(event(207.9, 150));
  expect([held.value, told.captured]).toEqual([false, []]);
  expect(zoom.value.centre).toEqual([0.5, 0.5]);
  handlers().onPointerMove(event(208, 150));
  expect([held.value, told.captured]).toEqual([true, [1]]);
  expect(zoom.value).toEqual(near(4, 0.5 - 8 / 1200, 0.5));
  handlers().onPointerMove(event(200, 174)); // however near to where it began
  handlers().onPointerMove(event(201, 150));
  expect(zoom.value).toEqual(near(4, 0.5 - 1 / 1200, 0.5));
  expect(told.captured).toEqual([1]);
  handlers().onPointerUp(event(201, 150));
  expect(held.value).toBe(false);
  handlers().onPointerMove(event(300, 150)); // a mouse that only passes
  expect(zoom.value).toEqual(near(4, 0.5 - 1 / 1200, 0.5));
});

test('two fingers zoom: what lay between them stays between them', () => {
  const { zoom, held, event, handlers } = made();
  handlers().onPointerDown(event(150, 150, { pointerId: 1 }));
  handlers().onPointerDown(event(250, 150, { pointerId: 2 }));
  handlers().onPointerDown(event(10, 10, { pointerId: 3 })); // a third counts for nothing
  handlers().onPointerMove(event(100, 150, { pointerId: 1 }));
  expect(held.value).toBe(true);
  handlers().onPointerMove(event(300, 150, { pointerId: 2 }));
  expect(zoom.value).toEqual(near(2, 0.5, 0.5));
  // One leaves: the other goes on by itself from there.
  handlers().onPointerUp(event(100, 150, { pointerId: 1 }));
  expect(held.value).toBe(true);
  handlers().onPointerMove(event(330, 150, { pointerId: 2 }));
  expect(zoom.value).toEqual(near(2, 0.5 - 30 / 600, 0.5));
  handlers().onPointerCancel(event(330, 150, { pointerId: 2 }));
  expect(held.value).toBe(false);
});

test('a second tap near the first and soon after it zooms in there, and once more out', () => {
  const { zoom, tap } = made();
  tap(200, 150, 1000);
  tap(239, 150, 1319);
  expect(zoom.value.scale).toBe(2.5);
  // What was tapped stays under the finger.
  expect(zoom.value).toEqual(near(2.5, 0.5 + 39 / 300 - 39 / 750, 0.5));
  tap(239, 150, 1400); // a third tap begins anew
  expect(zoom.value.scale).toBe(2.5);
  tap(239, 150, 1500);
  expect(zoom.value).toEqual(wholePicture);
});

test.each([
  ['too late', 200, 1320],
  ['too far away', 240, 1100],
])('a second tap %s is none', (_, x, ms) => {
  const { zoom, tap } = made();
  tap(200, 150, 1000);
  tap(x, 150, ms);
  expect(zoom.value).toEqual(wholePicture);
});

test('after a drag the click does not reach the picture, after a tap and by a key it does', () => {
  const { told, event, handlers, tap } = made({ scale: 2, centre: [0.5, 0.5] });
  tap(200, 150, 0);
  handlers().onClickCapture(event(0, 0, { detail: 1 }));
  expect([told.prevented, told.stopped]).toEqual([0, 0]);
  handlers().onPointerDown(event(200, 150));
  handlers().onPointerMove(event(260, 150));
  handlers().onPointerUp(event(260, 150, { timeStamp: 10 }));
  handlers().onClickCapture(event(0, 0, { detail: 0 }));
  expect([told.prevented, told.stopped]).toEqual([0, 0]);
  handlers().onClickCapture(event(0, 0, { detail: 1 }));
  expect([told.prevented, told.stopped]).toEqual([1, 1]);
  handlers().onClickCapture(event(0, 0, { detail: 1 })); // that one only
  expect(told.prevented).toBe(1);
});

test('two fingers that do not move are no tap', () => {
  const { zoom, event, handlers, tap } = made();
  handlers().onPointerDown(event(200, 150, { pointerId: 1 }));
  handlers().onPointerDown(event(210, 150, { pointerId: 2 }));
  handlers().onPointerUp(event(210, 150, { pointerId: 2, timeStamp: 0 }));
  handlers().onPointerUp(event(200, 150, { pointerId: 1, timeStamp: 0 }));
  tap(200, 150, 100);
  expect(zoom.value).toEqual(wholePicture);
});

test('the wheel zooms where the mouse is, faster with Ctrl; where all is seen the page may scroll', () => {
  const { zoom, told, event, handlers } = made();
  handlers().onWheel(event(200, 150, { deltaY: 100, ctrlKey: false }));
  expect([zoom.value, told.prevented]).toEqual([wholePicture, 0]);
  handlers().onWheel(event(230, 150, { deltaY: -200, ctrlKey: false }));
  const scale = Math.exp(0.4);
  expect(zoom.value.scale).toBeCloseTo(scale, 9);
  expect(zoom.value.centre[0]).toBeCloseTo(0.5 + 30 / 300 - 30 / (300 * scale), 9);
  expect(told.prevented).toBe(1);
  handlers().onWheel(event(200, 150, { deltaY: -30, ctrlKey: true }));
  expect(zoom.value.scale).toBeCloseTo(scale * Math.exp(0.3), 9);
  handlers().onWheel(event(200, 150, { deltaY: 200, ctrlKey: false }));
  expect(zoom.value.scale).toBeCloseTo(Math.exp(0.3), 9);
});

function keysOver(begin: Zoom) {
  const zoom = signal(begin);
  const keys = runHook(() => useZoomKeys(zoom, ratio));
  hooks.push(keys);
  const stage = { clientWidth: 400, clientHeight: 300, contains: () => false };
  const press = (key: string, more: object = {}): boolean => {
    let prevented = 0;
    let stopped = 0;
    keys.current.onKeyDown({
      ...{
        key,
        currentTarget: stage,
        preventDefault: () => prevented++,
        stopPropagation: () => stopped++,
      },
      ...more,
    } as never);
    expect(stopped).toBe(prevented);
    return prevented === 1;
  };
  return { zoom, press, keys, stage };
}

test('plus and minus zoom about the middle, 0 shows all', () => {
  const { zoom, press } = keysOver(wholePicture);
  expect([press('+'), press('=')]).toEqual([true, true]);
  expect(zoom.value).toEqual(near(1.4 ** 2, 0.5, 0.5));
  expect(press('-')).toBe(true);
  expect(zoom.value).toEqual(near(1.4, 0.5, 0.5));
  expect([press('0'), zoom.value]).toEqual([true, wholePicture]);
  expect([press('x'), press('+', { ctrlKey: true })]).toEqual([false, false]);
});

test.each([
  ['ArrowRight', 60, 0],
  ['ArrowLeft', -60, 0],
  ['ArrowDown', 0, 60],
  ['ArrowUp', 0, -60],
])('%s moves the view that way by 60 px, unless a finger brought the focus', (key, right, down) => {
  const { zoom, press, keys, stage } = keysOver({ scale: 4, centre: [0.5, 0.5] });
  expect(press(key)).toBe(true);
  expect(zoom.value).toEqual(near(4, 0.5 + right / 1200, 0.5 + down / 1200));
  keys.current.onPointerDownCapture();
  expect(press(key)).toBe(false);
  const page = globalThis as { Node?: unknown };
  const before = page.Node;
  page.Node = class {};
  keys.current.onFocusOut({ currentTarget: stage, relatedTarget: null } as never);
  page.Node = before;
  expect(press(key)).toBe(true);
});

test('where all is seen arrows do nothing', () => {
  expect(keysOver(wholePicture).press('ArrowRight')).toBe(false);
});
