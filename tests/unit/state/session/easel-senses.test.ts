import { signal } from '@preact/signals';
import { expect, test, vi } from 'vitest';
import { usualEasel } from '../../../../app/core/session/easel-settings.ts';
import { freshState, type SessionState } from '../../../../app/core/session/session-state.ts';
import type { Reach } from '../../../../app/core/words/session/reach-words.ts';
import { createEaselSenses } from '../../../../app/state/session/easel-senses.ts';

function senses(kept: unknown) {
  const state = signal<'asleep' | 'awake' | 'missing'>('asleep');
  const chime = {
    state,
    wake: vi.fn(() => {
      state.value = 'awake';
    }),
    play: vi.fn(),
    shake: vi.fn(),
  };
  const alarmState = signal<Reach['alarm']>('off');
  const alarm = {
    state: alarmState,
    start: vi.fn(() => {
      alarmState.value = 'on';
    }),
    follow: vi.fn(),
    stop: vi.fn(() => {
      alarmState.value = 'off';
    }),
  };
  const notice = {
    state: signal<Reach['notice']>('unasked'),
    ask: vi.fn(async () => {}),
    show: vi.fn(async () => {}),
    clear: vi.fn(async () => {}),
  };
  const screenWatch = { hold: vi.fn(), release: vi.fn() };
  const session = signal<SessionState>(freshState);
  const speaker = { canSpeak: signal(true), say: vi.fn(), hush: vi.fn() };
  const keepSetting = vi.fn(async () => {});
  const easel = {
    desk: signal(null),
    session,
    time: signal({ atMs: 0, paintingMs: 0 }),
  };
  const made = createEaselSenses({
    store: { setting: async () => kept, keepSetting, unkeptSettings: signal(new Map()) },
    easel: easel as never,
    chime,
    speaker,
    alarm,
    notice,
    screenWatch,
  });
  return { made, chime, speaker, keepSetting, alarm, notice, screenWatch, session };
}
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

test('turned off it stays off, whatever she taps; turned on again: a sample at once, and it is kept', async () => {
  const { made, chime, keepSetting } = senses({ ...usualEasel, sound: false });
  await settled();
  made.touched();
  expect(chime.wake).not.toHaveBeenCalled();
  expect(made.sound.value).toBe('off');
  made.change({ sound: true });
  expect(chime.wake).toHaveBeenCalledExactlyOnceWith({ kind: 'end', louder: 0 });
  expect(made.sound.value).toBe('on');
  expect(keepSetting).toHaveBeenCalledWith('easel', { ...usualEasel, sound: true });
});

test('the first tap at the easel lets the clock be heard, without a sample', async () => {
  const { made, chime } = senses(null);
  await settled();
  expect(made.sound.value).toBe('tap');
  made.touched();
  expect(chime.wake).toHaveBeenCalledExactlyOnceWith();
  expect(made.sound.value).toBe('on');
});

test('after a reload a tap is asked for, and any tap will do', async () => {
  const { made, chime } = senses({ ...usualEasel, sound: true });
  await settled();
  expect(made.sound.value).toBe('tap');
  expect(chime.wake).not.toHaveBeenCalled();
  made.touched();
  expect(made.sound.value).toBe('on');
});

test('speech on says so at once, speech off breaks it off', async () => {
  const { made, speaker } = senses(null);
  await settled();
  made.change({ voice: true });
  expect(speaker.say).toHaveBeenCalledOnce();
  made.change({ voice: false });
  expect(speaker.hush).toHaveBeenCalledOnce();
});

test('what she set before the kept settings came is not overwritten by them', async () => {
  const { made } = senses({ ...usualEasel, hand: 'right' });
  made.change({ hand: 'left' });
  await settled();
  expect(made.settings.value.hand).toBe('left');
});

const drying = (endsLowMs: number): SessionState => ({
  ...freshState,
  phase: 'drying',
  timer: {
    key: 'wash',
    startedMs: 0,
    shineLowMs: 0,
    shineHighMs: 0,
    endsLowMs,
    endsHighMs: 2 * endsLowMs,
    shineGoneMs: null,
    dryMs: null,
    reckoned: { shineMinutes: [0, 0], dryMinutes: [0, 0] },
    course: null,
  },
});

test('the screen may go off while the sound plays on, and is kept on as soon as it does not', () => {
  const { made, alarm, screenWatch, session } = senses(null);
  session.value = drying(1000);
  const stop = made.listen();
  expect(screenWatch.release).not.toHaveBeenCalled();
  made.rest();
  expect(alarm.start).toHaveBeenCalledOnce();
  expect(screenWatch.release).toHaveBeenCalledOnce();
  screenWatch.hold.mockClear();
  alarm.state.value = 'stopped'; // a call came in
  expect(screenWatch.hold).toHaveBeenCalled();
  expect(made.resting.value).toBe(true);
  stop();
  expect(made.resting.value).toBe(false);
});

test('with the sound off the dark face alone is shown, and the screen is kept on', () => {
  const { made, alarm, screenWatch, session } = senses(null);
  made.change({ sound: false });
  session.value = drying(1000);
  const stop = made.listen();
  made.rest();
  expect(alarm.start).not.toHaveBeenCalled();
  expect(screenWatch.release).not.toHaveBeenCalled();
  stop();
});

test('a wait made longer moves the sound with it; no wait ends the dark face', () => {
  const { made, alarm, session } = senses(null);
  session.value = drying(1000);
  const stop = made.listen();
  made.rest();
  alarm.follow.mockClear();
  session.value = { ...session.value }; // nothing of the wait has changed
  expect(alarm.follow).not.toHaveBeenCalled();
  session.value = drying(5000);
  expect(alarm.follow).toHaveBeenCalledOnce();
  session.value = freshState;
  expect(made.resting.value).toBe(false);
  stop();
});

test('sound turned off silences what plays on, too', () => {
  const { made, alarm } = senses(null);
  made.callWithScreenOff(true);
  expect(made.reach.value.alarm).toBe('on');
  made.change({ sound: false });
  expect(alarm.stop).toHaveBeenCalled();
  expect(made.reach.value).toEqual({ sound: 'off', alarm: 'off', notice: 'unasked' });
});
