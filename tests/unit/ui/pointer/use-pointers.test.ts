import { afterEach, expect, test } from 'vitest';
import { placeInPx, placeInShares, usePointers } from '../../../../app/ui/pointer/use-pointers.ts';
import { runHook } from '../../../support/ui/run-hook.ts';

// Places follow from the frame made here: 200 x 100 px, its corner at 30, 40.
const stage = {
  getBoundingClientRect: () => ({ left: 30, top: 40, width: 200, height: 100 }),
};
const at = (clientX: number, clientY: number) =>
  ({ currentTarget: stage, clientX, clientY }) as never;

test('a place in px is counted from the corner of the element', () => {
  expect(placeInPx(at(30, 40))).toEqual([0, 0]);
  expect(placeInPx(at(80, 10))).toEqual([50, -30]);
});

test('a place in shares is held within the element, or so far beyond it', () => {
  expect(placeInShares(at(80, 65))).toEqual([0.25, 0.25]);
  expect(placeInShares(at(10, 200)).map((share) => share + 0)).toEqual([0, 1]);
  expect(placeInShares(at(10, 160), 0.25)).toEqual([-0.1, 1.2]);
  expect(placeInShares(at(-500, 900), 0.25)).toEqual([-0.25, 1.25]);
  const other = { getBoundingClientRect: () => ({ left: 0, top: 0, width: 100, height: 200 }) };
  expect(placeInShares(at(50, 50), 0, other as never)).toEqual([0.5, 0.25]);
});

const hooks: { leave(): void }[] = [];
afterEach(() => {
  for (const hook of hooks.splice(0)) hook.leave();
});

function followed(most: 1 | 2, captures: boolean, takes = true) {
  const told: unknown[] = [];
  const captured: number[] = [];
  const element = { ...stage, setPointerCapture: (id: number) => captured.push(id) };
  const hook = runHook(() =>
    usePointers({
      ...{ most, captures, placeOf: placeInPx },
      onDown: (_event, place) => {
        told.push(['down', ...place]);
        return takes;
      },
      onOneMore: () => told.push('one more'),
      onMove: (_event, place) => told.push(['move', ...place]),
      onHover: () => told.push('hover'),
      onUp: (_event, place) => told.push(['up', ...place]),
      onCancel: () => told.push('cancel'),
    }),
  );
  hooks.push(hook);
  const event = (pointerId: number, x: number, more: object = {}) =>
    ({
      ...{
        currentTarget: element,
        target: element,
        pointerId,
        clientX: 30 + x,
        clientY: 40,
        button: 0,
      },
      ...more,
    }) as never;
  return { told, captured, event, element, ...hook.current };
}

test('a finger is followed from where it comes down to where it is lifted', () => {
  const { told, captured, event, handlers, places } = followed(1, true);
  handlers.onPointerMove(event(1, 5));
  handlers.onPointerUp(event(1, 5));
  handlers.onPointerDown(event(1, 10));
  expect(captured).toEqual([1]);
  handlers.onPointerMove(event(1, 20));
  expect([...places]).toEqual([[1, [20, 0]]]);
  handlers.onPointerDown(event(2, 50)); // beyond those that are followed
  handlers.onPointerMove(event(2, 60));
  handlers.onPointerUp(event(2, 60));
  handlers.onPointerUp(event(1, 30));
  expect(told).toEqual([
    'hover',
    ['down', 10, 0],
    ['move', 20, 0],
    'one more',
    'hover',
    ['up', 30, 0],
  ]);
  expect(places.size).toBe(0);
});

test('other buttons are not followed, nor what is refused; without a wish nothing is captured', () => {
  const right = followed(2, true);
  right.handlers.onPointerDown(right.event(1, 10, { button: 2 }));
  expect(right.told).toEqual([]);
  const refused = followed(2, true, false);
  refused.handlers.onPointerDown(refused.event(1, 10));
  expect([refused.places.size, refused.captured]).toEqual([0, []]);
  const free = followed(2, false);
  free.handlers.onPointerDown(free.event(1, 10));
  expect([free.places.size, free.captured]).toEqual([1, []]);
});

test('a pointer the browser takes away is told once, and only if it was followed', () => {
  const { told, event, handlers, places } = followed(2, false);
  handlers.onPointerDown(event(1, 10));
  handlers.onPointerDown(event(2, 20));
  handlers.onPointerCancel(event(3, 0));
  handlers.onLostPointerCapture(event(1, 10, { target: {} })); // a child lost it
  expect(places.size).toBe(2);
  handlers.onLostPointerCapture(event(1, 10));
  handlers.onPointerCancel(event(1, 10));
  expect([told.slice(2), [...places.keys()]]).toEqual([['cancel'], [2]]);
});
