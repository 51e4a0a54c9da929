import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { giveHeadStart } from '../../../app/state/head-start.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('the worker warms up once, a moment after she came', () => {
  const warmUp = vi.fn();
  const isPainting = signal(false);
  const giveUp = giveHeadStart(isPainting, warmUp);
  expect(warmUp).not.toHaveBeenCalled();
  vi.advanceTimersByTime(60_000);
  expect(warmUp).toHaveBeenCalledTimes(1);
  isPainting.value = true;
  isPainting.value = false;
  vi.advanceTimersByTime(60_000);
  expect(warmUp).toHaveBeenCalledTimes(1);
  giveUp();
});

test('not while she paints: a session gone on with keeps the battery, and what comes after it is warmed for', () => {
  const warmUp = vi.fn();
  const isPainting = signal(false);
  const giveUp = giveHeadStart(isPainting, warmUp);
  vi.advanceTimersByTime(1000);
  isPainting.value = true;
  vi.advanceTimersByTime(3_600_000);
  expect(warmUp).not.toHaveBeenCalled();
  isPainting.value = false;
  vi.advanceTimersByTime(60_000);
  expect(warmUp).toHaveBeenCalledTimes(1);
  giveUp();
});
