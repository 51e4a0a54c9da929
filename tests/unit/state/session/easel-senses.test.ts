import { signal } from '@preact/signals';
import { expect, test, vi } from 'vitest';
import { usualEasel } from '../../../../app/core/session/easel-settings.ts';
import { freshState } from '../../../../app/core/session/session-state.ts';
import { createEaselSenses } from '../../../../app/state/session/easel-senses.ts';

function senses(kept: unknown) {
  const state = signal<'asleep' | 'awake' | 'missing'>('asleep');
  const chime = {
    state,
    wake: vi.fn(() => {
      state.value = 'awake';
    }),
    play: vi.fn(),
  };
  const speaker = { canSpeak: signal(true), say: vi.fn(), hush: vi.fn() };
  const keepSetting = vi.fn(async () => {});
  const easel = {
    desk: signal(null),
    session: signal(freshState),
    time: signal({ atMs: 0, paintingMs: 0 }),
  };
  const made = createEaselSenses({
    store: { setting: async () => kept, keepSetting },
    easel: easel as never,
    chime,
    speaker,
  });
  return { made, chime, speaker, keepSetting };
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
