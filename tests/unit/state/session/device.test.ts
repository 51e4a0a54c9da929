import { expect, test, vi } from 'vitest';
import { createScreenWatch } from '../../../../app/state/session/device.ts';

/** A page that can be hidden, and a device that hands out locks or refuses them. */
function device(refuses = false, againMs?: number) {
  const page = Object.assign(new EventTarget(), { visibilityState: 'visible' as const });
  const locks: (EventTarget & { release: () => Promise<void> })[] = [];
  const request = vi.fn(async () => {
    if (refuses) throw new DOMException('', 'NotAllowedError');
    const lock = Object.assign(new EventTarget(), {
      release: vi.fn(async () => {
        lock.dispatchEvent(new Event('release'));
      }),
    });
    locks.push(lock);
    return lock;
  });
  const see = (visibilityState: 'visible' | 'hidden') => {
    Object.assign(page, { visibilityState });
    // The browser takes the lock when the page is hidden (W3C Screen Wake Lock API).
    if (visibilityState === 'hidden') locks.at(-1)?.dispatchEvent(new Event('release'));
    page.dispatchEvent(new Event('visibilitychange'));
  };
  const watch = createScreenWatch(page, { wakeLock: { request } } as never, againMs);
  return { watch, request, locks, see };
}
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

test('A-TIM-6: asked for again on return, and not after the session', async () => {
  const { watch, request, see } = device();
  watch.hold();
  await settled();
  expect(watch.staysOn.value).toBe(true);
  see('hidden');
  see('visible');
  await settled();
  expect(request).toHaveBeenCalledTimes(2);
  expect(watch.staysOn.value).toBe(true);
  watch.release();
  see('hidden');
  see('visible');
  await settled();
  expect(request).toHaveBeenCalledTimes(2);
  expect(watch.staysOn.value).toBeNull();
});

test('A-TIM-7: refused or missing is said and breaks nothing', async () => {
  const { watch } = device(true);
  watch.hold();
  await settled();
  expect(watch.staysOn.value).toBe(false);
  const none = createScreenWatch(new EventTarget() as Document, {} as Navigator);
  none.hold();
  await settled();
  expect(none.staysOn.value).toBe(false);
});

test('taken away in sight of her, it is said; one lock at a time', async () => {
  const { watch, locks, request, see } = device();
  watch.hold();
  see('visible');
  see('visible');
  await settled();
  expect(request).toHaveBeenCalledTimes(1);
  locks[0]?.dispatchEvent(new Event('release'));
  expect(watch.staysOn.value).toBe(false);
  see('visible');
  await settled();
  expect(watch.staysOn.value).toBe(true);
});

test('let go of before it was granted: it is given back', async () => {
  const { watch, locks } = device();
  watch.hold();
  watch.release();
  await settled();
  expect(locks[0]?.release).toHaveBeenCalledOnce();
  expect(watch.staysOn.value).toBeNull();
});

test('and is asked for again by itself', async () => {
  const { watch, locks, request } = device(false, 1);
  watch.hold();
  await settled();
  locks[0]?.dispatchEvent(new Event('release'));
  expect(watch.staysOn.value).toBe(false);
  await expect.poll(() => watch.staysOn.value).toBe(true);
  expect(request).toHaveBeenCalledTimes(2);
  watch.release();
});
