import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { longestFileSeconds } from '../../../../app/core/session/alarm-sound.ts';
import type { NextCall } from '../../../../app/core/session/choose-cue.ts';
import { createWaitAlarm } from '../../../../app/state/session/wait-alarm.ts';

const made: Blob[] = [];
beforeEach(() => {
  made.length = 0;
  vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
    made.push(blob as Blob);
    return `blob:${made.length}`;
  });
  vi.spyOn(URL, 'revokeObjectURL').mockImplementation(() => {});
});
afterEach(() => vi.restoreAllMocks());

/** An audio element and a media session that do as told. */
function device({ refuses = false } = {}) {
  const handlers: Record<string, () => void> = {};
  class Sounding extends EventTarget {
    src = '';
    ended = false;
    play = vi.fn(async () => {
      this.ended = false;
      if (refuses) throw new DOMException('', 'NotAllowedError');
    });
    pause = vi.fn();
    removeAttribute = vi.fn();
    constructor() {
      super();
      element = this;
    }
  }
  let element: Sounding | null = null;
  const mediaSession = {
    metadata: null as unknown,
    playbackState: 'none',
    setActionHandler: (action: string, handler: () => void) => {
      handlers[action] = handler;
    },
  };
  let next: NextCall | null = { inMs: 60_000, louder: 0 };
  const page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  const window = {
    Audio: Sounding,
    MediaMetadata: class {
      constructor(readonly init: object) {}
    },
    navigator: { mediaSession },
    document: page,
  };
  const alarm = createWaitAlarm(window as never, {
    next: () => next,
    words: () => ({ title: 'Look from 14:32 on', artist: 'The sheet dries' }),
  });
  return {
    alarm,
    mediaSession,
    handlers,
    page,
    audio: () => element as unknown as Sounding,
    wait(call: NextCall | null) {
      next = call;
    },
    end() {
      if (!element) return;
      element.ended = true;
      element.dispatchEvent(new Event('pause')); // HTML: fired before it has ended
      element.dispatchEvent(new Event('ended'));
    },
  };
}
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const secondsOf = (blob: Blob | undefined): number => ((blob?.size ?? 0) - 44) / 16_000;

test('quiet until the call, then the call; on the lock screen it says when to look', async () => {
  const { alarm, mediaSession } = device();
  alarm.start();
  expect(alarm.state.value).toBe('off'); // promised only once it plays
  await settled();
  expect(alarm.state.value).toBe('on');
  expect(secondsOf(made[0])).toBeGreaterThan(60.5);
  expect(mediaSession.playbackState).toBe('playing');
  expect(mediaSession.metadata).toMatchObject({ init: { title: 'Look from 14:32 on' } });
});

test('a long wait goes on from file to file by the clock, and ends with the last reminder', async () => {
  const { alarm, wait, end } = device();
  wait({ inMs: (longestFileSeconds + 300) * 1000, louder: 0 });
  alarm.start();
  await settled();
  expect(secondsOf(made[0])).toBe(longestFileSeconds);
  wait({ inMs: 299_000, louder: 0 });
  end();
  await settled();
  expect(alarm.state.value).toBe('on');
  expect(Math.floor(secondsOf(made[1]))).toBeGreaterThanOrEqual(299);
  wait(null);
  end();
  expect(alarm.state.value).toBe('off');
});

test('refused, stopped from outside, stopped on the lock screen: each is said as such', async () => {
  const refused = device({ refuses: true });
  refused.alarm.start();
  await settled();
  expect(refused.alarm.state.value).toBe('refused');

  const called = device();
  called.alarm.start();
  await settled();
  called.audio().dispatchEvent(new Event('pause'));
  expect(called.alarm.state.value).toBe('stopped');
  called.page.dispatchEvent(new Event('visibilitychange'));
  expect(called.alarm.state.value).toBe('stopped'); // it does not begin by itself

  const paused = device();
  paused.alarm.start();
  await settled();
  paused.handlers.pause?.();
  expect(paused.alarm.state.value).toBe('stopped');
  expect(paused.mediaSession.playbackState).toBe('none');
});

test('another wait: what plays is put right; no wait: it ends', async () => {
  const { alarm, wait } = device();
  alarm.start();
  await settled();
  wait({ inMs: 10_000, louder: 2 });
  alarm.follow();
  await settled();
  expect(Math.floor(secondsOf(made[1]))).toBeGreaterThanOrEqual(10);
  wait(null);
  alarm.follow();
  expect(alarm.state.value).toBe('off');
});

test('a browser without such an element is told apart', () => {
  const page = new EventTarget();
  const alarm = createWaitAlarm({ navigator: {}, document: page } as never, {
    next: () => ({ inMs: 1, louder: 0 }),
    words: () => ({ title: '', artist: '' }),
  });
  alarm.start();
  expect(alarm.state.value).toBe('missing');
});
