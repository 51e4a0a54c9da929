import { expect, test } from 'vitest';
import {
  createCrashGuard,
  createReadingLock,
  type NoteStore,
} from '../../../app/client/crash-guard.ts';

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

test('killed once it is read at full size again from the next visit on; killed twice it stays small', () => {
  const store = memory();
  createCrashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = createCrashGuard(store);
  again.begin({ photoId: 'a', longSidePx: 800 });
  again.end(true);
  expect(again.sizeFor('a')).toBe(800); // not at once
  const third = createCrashGuard(store);
  expect(third.sizeFor('a')).toBe(1600);
  third.begin({ photoId: 'a', longSidePx: 1600 });
  const fourth = createCrashGuard(store);
  fourth.begin({ photoId: 'a', longSidePx: 800 });
  fourth.end(true);
  expect(createCrashGuard(store).sizeFor('a')).toBe(800);
});

test('a photo whose reading from before could be shown waits no more', () => {
  const store = memory();
  createCrashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const again = createCrashGuard(store);
  again.shown('b');
  expect(again.waits('a')).toBe(true);
  again.shown('a');
  expect(again.waits('a')).toBe(false);
  expect(createCrashGuard(store).left).toBeNull();
});

/** Web Locks as two windows share them (W3C Web Locks). */
function sharedLocks() {
  const held = new Set<{ name: string }>();
  return {
    request: async (name: string, _: unknown, work: () => Promise<void>) => {
      const lock = { name };
      held.add(lock);
      await work();
      held.delete(lock);
    },
    query: async () => ({ held: [...held] }),
  } as unknown as LockManager;
}

test('a second window opened while the first reads is told of no crash', async () => {
  const [store, locks] = [memory(), sharedLocks()];
  const first = createCrashGuard(store, createReadingLock(locks));
  first.begin({ photoId: 'a', longSidePx: 1600 });
  const second = createCrashGuard(store, createReadingLock(locks));
  await second.ready;
  expect([second.waits('a'), second.sizeFor('a')]).toEqual([false, 1600]);
  first.end(true);
  const third = createCrashGuard(store, createReadingLock(locks));
  await third.ready;
  expect([third.left, third.sizeFor('a')]).toEqual([null, 1600]);
  await expect.poll(async () => (await locks.query()).held).toEqual([]);
});

test('a window that died at it holds no lock: that was a crash', async () => {
  const store = memory();
  createCrashGuard(store).begin({ photoId: 'a', longSidePx: 1600 });
  const next = createCrashGuard(store, createReadingLock(sharedLocks()));
  await next.ready;
  expect([next.waits('a'), next.sizeFor('a')]).toEqual([true, 800]);
});
