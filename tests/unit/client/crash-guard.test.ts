import { expect, test } from 'vitest';
import { createCrashGuard, type NoteStore } from '../../../app/client/crash-guard.ts';

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
  const guard = createCrashGuard(store);
  guard.begin({ photoId: 'a', longSidePx: 1600 });
  guard.end();
  const later = createCrashGuard(store);
  expect(later.left).toBeNull();
  expect([later.waits('a'), later.sizeFor('a')]).toEqual([false, 1600]);
});

test('after a crash that photo waits and is offered smaller; others go as usual', () => {
  const store = memory();
  createCrashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = createCrashGuard(store);
  expect(again.left).toEqual({ photoId: 'a', longSidePx: 1600 });
  expect([again.waits('a'), again.sizeFor('a')]).toEqual([true, 800]);
  expect([again.waits('b'), again.sizeFor('b')]).toEqual([false, 1600]);
});

test('a second start without a reading still waits: no loop', () => {
  const store = memory();
  createCrashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  createCrashGuard(store);
  expect(createCrashGuard(store).waits('a')).toBe(true);
});

test('neither leaving the page nor reading another photo makes it forget', () => {
  const store = memory();
  createCrashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = createCrashGuard(store);
  again.end(); // the page is left and nothing was read
  expect(createCrashGuard(store).waits('a')).toBe(true);
  again.begin({ photoId: 'b', longSidePx: 1600 });
  again.end();
  const third = createCrashGuard(store);
  expect([third.waits('a'), third.waits('b')]).toEqual([true, false]);
});

test('once it has been read smaller the photo opens by itself again, but stays small', () => {
  const store = memory();
  createCrashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = createCrashGuard(store);
  again.begin({ photoId: 'a', longSidePx: 800 });
  again.end();
  expect([again.waits('a'), again.sizeFor('a')]).toEqual([false, 800]);
  const third = createCrashGuard(store);
  expect([third.left, third.waits('a'), third.sizeFor('a')]).toEqual([null, false, 800]);
  expect(third.sizeFor('b')).toBe(1600);
});

test('a shut-off store or a spoilt note does no harm', () => {
  const shut = (): never => {
    throw new Error('denied');
  };
  const guard = createCrashGuard({ getItem: shut, setItem: shut, removeItem: shut });
  expect(() => {
    guard.begin({ photoId: 'a', longSidePx: 1600 });
    guard.end();
  }).not.toThrow();
  for (const spoilt of ['{', '7', 'null', '{"photoId":1,"longSidePx":2}']) {
    const store = memory();
    store.setItem('reading-under-way', spoilt);
    expect(createCrashGuard(store).left).toBeNull();
  }
});
