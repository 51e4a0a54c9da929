import { expect, test } from 'vitest';
import { crashGuard, type NoteStore } from '../../../app/analysis/crash-guard.ts';

function memory(): NoteStore {
  const kept = new Map<string, string>();
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
  };
}

test('a reading that ends leaves nothing behind', () => {
  const store = memory();
  const guard = crashGuard(store);
  guard.begin({ photoId: 'a', longSidePx: 1600 });
  guard.end();
  const later = crashGuard(store);
  expect(later.left).toBeNull();
  expect([later.waits('a'), later.sizeFor('a')]).toEqual([false, 1600]);
});

test('after a crash that photo waits and is offered smaller; others go as usual', () => {
  const store = memory();
  crashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = crashGuard(store);
  expect(again.left).toEqual({ photoId: 'a', longSidePx: 1600 });
  expect([again.waits('a'), again.sizeFor('a')]).toEqual([true, 800]);
  expect([again.waits('b'), again.sizeFor('b')]).toEqual([false, 1600]);
});

test('a second start without a reading still waits: no loop', () => {
  const store = memory();
  crashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  crashGuard(store);
  expect(crashGuard(store).waits('a')).toBe(true);
});

test('neither leaving the page nor reading another photo makes it forget', () => {
  const store = memory();
  crashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = crashGuard(store);
  again.end(); // the page is left and nothing was read
  expect(crashGuard(store).waits('a')).toBe(true);
  again.begin({ photoId: 'b', longSidePx: 1600 });
  again.end();
  const third = crashGuard(store);
  expect([third.waits('a'), third.waits('b')]).toEqual([true, false]);
});

test('once it has been read smaller the photo opens by itself again, but stays small', () => {
  const store = memory();
  crashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = crashGuard(store);
  again.begin({ photoId: 'a', longSidePx: 800 });
  again.end();
  expect([again.waits('a'), again.sizeFor('a')]).toEqual([false, 800]);
  const third = crashGuard(store);
  expect([third.left, third.waits('a'), third.sizeFor('a')]).toEqual([null, false, 800]);
  expect(third.sizeFor('b')).toBe(1600);
});

test('a shut-off store or a spoilt note does no harm', () => {
  const shut = (): never => {
    throw new Error('denied');
  };
  const guard = crashGuard({ getItem: shut, setItem: shut, removeItem: shut });
  expect(() => {
    guard.begin({ photoId: 'a', longSidePx: 1600 });
    guard.end();
  }).not.toThrow();
  for (const spoilt of ['{', '7', 'null', '{"photoId":1,"longSidePx":2}']) {
    const store = memory();
    store.setItem('reading-under-way', spoilt);
    expect(crashGuard(store).left).toBeNull();
  }
});
