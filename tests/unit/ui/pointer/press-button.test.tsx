import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { PressButton } from '../../../../app/ui/pointer/press-button.tsx';
import { PressPlace } from '../../../../app/ui/pointer/press-place.ts';
import { type BareElement, drawBare } from '../../../support/ui/bare-page.ts';

// A finger holds 0.4 s, is at most 72 px broad and runs no farther than 40 px; water does otherwise (own).
let acted: number;
let told: string[];
let count: number;
let another: (() => void) | null;
let drawn: ReturnType<typeof drawBare>;
let button: BareElement;

const place = {
  touches: {
    get count() {
      return count;
    },
    onAnother: (tell: () => void) => {
      another = tell;
      return () => {
        another = null;
      };
    },
    swallowClick: () => {},
    leave: () => {},
  },
  pressed: () => told.push('pressed'),
  tooSoon: () => told.push('too soon'),
};
const press = (more: object = {}) => (
  <PressPlace.Provider value={place as never}>
    <PressButton onAct={() => acted++} {...more}>
      Next step
    </PressButton>
  </PressPlace.Provider>
);

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  [acted, told, count, another] = [0, [], 1, null];
  drawn = drawBare(press());
  [button] = drawn.body.all('button') as [BareElement];
});
afterEach(() => {
  drawn.leave();
  vi.useRealTimers();
});

const finger = (kind: string, clientX = 100, more: object = {}): Event =>
  button.tell(kind, {
    ...{
      pointerId: 1,
      pointerType: 'touch',
      button: 0,
      clientX,
      clientY: 50,
      width: 30,
      height: 20,
    },
    ...more,
  });
const isHeld = async (): Promise<boolean> => {
  await drawn.settled();
  return button.getAttribute('data-held') !== null;
};

test('a finger acts when it has been held for 0.4 s, once, and its click does nothing more', async () => {
  expect(button.words).toBe('Next step');
  finger('pointerdown');
  expect(await isHeld()).toBe(true);
  vi.advanceTimersByTime(399);
  expect([acted, told]).toEqual([0, []]);
  vi.advanceTimersByTime(1);
  expect([acted, told]).toEqual([1, ['pressed']]);
  expect(await isHeld()).toBe(false);
  finger('pointerup');
  button.tell('click', { detail: 1 });
  expect([acted, told]).toEqual([1, ['pressed']]);
});

test('one that is lifted before does not act, and is told so', async () => {
  finger('pointerdown');
  vi.advanceTimersByTime(300);
  finger('pointerup');
  button.tell('click', { detail: 1 });
  vi.advanceTimersByTime(1000);
  expect([acted, told]).toEqual([0, ['too soon']]);
  expect(await isHeld()).toBe(false);
});

test.each([
  ['broad as a hand', { width: 73 }, 0],
  ['broad the other way', { height: 73 }, 0],
  ['as broad as a finger may be', { width: 72, height: 72 }, 1],
])('what comes down %s', (_, more, times) => {
  finger('pointerdown', 100, more);
  vi.advanceTimersByTime(400);
  expect(acted).toBe(times);
});

test('two at once are no finger', () => {
  count = 2;
  finger('pointerdown');
  vi.advanceTimersByTime(400);
  expect(acted).toBe(0);
  // Where nobody counts them it is one.
  count = 0;
  finger('pointerdown');
  vi.advanceTimersByTime(400);
  expect(acted).toBe(1);
});

test.each([
  ['runs 40 px', 140, {}, 1],
  ['runs farther', 141, {}, 0],
  ['grows broad', 100, { width: 80 }, 0],
])('what %s while it is held', (_, x, more, times) => {
  finger('pointerdown');
  finger('pointermove', x, more);
  vi.advanceTimersByTime(400);
  expect(acted).toBe(times);
});

test('another touch, or the browser that takes it away, ends the press', () => {
  finger('pointerdown');
  another?.();
  vi.advanceTimersByTime(400);
  expect(acted).toBe(0);
  finger('pointerdown');
  finger('pointercancel');
  vi.advanceTimersByTime(400);
  expect(acted).toBe(0);
});

test('a mouse and a key act at once by their click', () => {
  finger('pointerdown', 100, { pointerType: 'mouse' });
  vi.advanceTimersByTime(400);
  expect(acted).toBe(0);
  finger('pointerup', 100, { pointerType: 'mouse' });
  button.tell('click', { detail: 1 });
  expect(acted).toBe(1);
  button.tell('click', { detail: 0 });
  expect([acted, told]).toEqual([2, []]);
  // After a finger only a key does; the next mouse does again.
  finger('pointerdown');
  finger('pointerup');
  button.tell('click', { detail: 0 });
  expect(acted).toBe(3);
  button.tell('click', { detail: 1 });
  expect(acted).toBe(4);
});

test('a key held down acts once, a long touch opens no menu', () => {
  expect(button.tell('keydown', { repeat: true }).defaultPrevented).toBe(true);
  expect(button.tell('keydown', { repeat: false }).defaultPrevented).toBe(false);
  expect(button.tell('contextmenu').defaultPrevented).toBe(true);
});

test('who leaves while a finger is down does not act', () => {
  finger('pointerdown');
  drawn.leave();
  vi.advanceTimersByTime(400);
  expect([acted, another]).toEqual([0, null]);
});
