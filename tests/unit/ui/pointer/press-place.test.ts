import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { usePressPlace } from '../../../../app/ui/pointer/press-place.ts';
import { runHook } from '../../../support/ui/run-hook.ts';

// A hint stands for 5 s, at the first press let go too soon and then at every third in a row (own).
const page = globalThis as { window?: unknown };
const before = page.window;
let glass: EventTarget;
let hook: ReturnType<typeof runHook<ReturnType<typeof usePressPlace>>>;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  glass = new EventTarget();
  page.window = glass;
  hook = runHook(usePressPlace);
});
afterEach(() => {
  hook.leave();
  page.window = before;
  vi.useRealTimers();
});

const touch = (kind: string, pointerId: number, more: object = {}): void => {
  const { isPrimary = pointerId === 1, ...rest } = more as { isPrimary?: boolean };
  glass.dispatchEvent(
    Object.assign(new Event(kind), { pointerId, pointerType: 'touch', isPrimary, ...rest }),
  );
};
/** A click somewhere; whether it reached what lies under it. */
function click(detail: number): boolean {
  const event = Object.assign(new Event('click', { cancelable: true }), { detail });
  let stopped = false;
  event.stopPropagation = () => {
    stopped = true;
  };
  glass.dispatchEvent(event);
  expect(event.defaultPrevented).toBe(stopped);
  return !stopped;
}

test('touches on the glass are counted, each until it leaves', () => {
  const { touches } = hook.current.place;
  expect(touches.count).toBe(0);
  touch('pointerdown', 1);
  touch('pointerdown', 2);
  touch('pointerdown', 9, { pointerType: 'mouse' });
  expect(touches.count).toBe(2);
  touch('pointerup', 2);
  expect(touches.count).toBe(1);
  touch('pointerdown', 3);
  touch('pointercancel', 3);
  expect(touches.count).toBe(1);
  // The first of new touches: what was never told to have left is forgotten.
  touch('pointerdown', 4, { isPrimary: true });
  expect(touches.count).toBe(1);
});

test('another touch is told to who listens, a first one and a mouse are not', () => {
  let told = 0;
  const stop = hook.current.place.touches.onAnother(() => told++);
  touch('pointerdown', 1);
  touch('pointerdown', 8, { pointerType: 'mouse' });
  expect(told).toBe(0);
  touch('pointerdown', 2);
  expect(told).toBe(1);
  stop();
  touch('pointerdown', 3);
  expect(told).toBe(1);
});

test('after a press held to its end the click of that finger is nobody’s; keys and the next finger click', () => {
  expect(click(1)).toBe(true);
  hook.current.place.pressed();
  expect(click(0)).toBe(true); // a key
  expect(click(1)).toBe(false);
  expect(click(1)).toBe(true);
  hook.current.place.pressed();
  touch('pointerdown', 1);
  expect(click(1)).toBe(true);
});

test('the hint comes with the first press let go too soon and every third, until it is old or one is held', async () => {
  const shown = (): boolean => hook.current.hint.value !== null;
  const { place } = hook.current;
  expect(shown()).toBe(false);
  place.tooSoon();
  expect(shown()).toBe(true);
  hook.again();
  await hook.settled();
  vi.advanceTimersByTime(4999);
  expect(shown()).toBe(true);
  vi.advanceTimersByTime(1);
  expect(shown()).toBe(false);
  place.tooSoon();
  place.tooSoon();
  expect(shown()).toBe(false);
  place.tooSoon();
  expect(shown()).toBe(true);
  place.pressed();
  expect(shown()).toBe(false);
  place.tooSoon(); // counted from there anew
  expect(shown()).toBe(true);
});

test('who leaves hears no more', async () => {
  const { touches } = hook.current.place;
  await hook.settled();
  hook.leave();
  await hook.settled();
  touch('pointerdown', 1);
  expect(touches.count).toBe(0);
});
