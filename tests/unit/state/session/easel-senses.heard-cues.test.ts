import { signal } from '@preact/signals';
import { beforeEach, expect, test, vi } from 'vitest';
import type { Cue } from '../../../../app/core/session/choose-cue.ts';
import { type EaselSettings, usualEasel } from '../../../../app/core/session/easel-settings.ts';
import { playCues } from '../../../../app/state/session/easel-senses.ts';

const play = vi.fn<(cue: Pick<Cue, 'kind' | 'louder'>) => void>();
const say = vi.fn<(words: string) => void>();
const hush = vi.fn();
const cue = signal<Cue | null>(null);
const settings = signal<EaselSettings>(usualEasel);
const step = (key: string): Cue => ({ key, kind: 'step', louder: 0, says: `Step ${key}.` });
const end = (key: string): Cue => ({ key, kind: 'end', louder: 0, says: `End ${key}.` });
const shake = vi.fn();
const show = vi.fn(async () => {});
const alarm = { state: signal<'off' | 'on'>('off') };
const listen = () =>
  playCues({
    cue,
    settings,
    chime: { play, shake },
    speaker: { say, hush },
    alarm,
    notice: { show },
  });

beforeEach(() => {
  vi.clearAllMocks();
  cue.value = null;
  settings.value = { ...usualEasel, sound: true, voice: true };
  alarm.state.value = 'off';
});

test('each cue is heard once, and spoken where she asked for it', () => {
  const stop = listen();
  cue.value = step('1');
  cue.value = end('a');
  cue.value = { ...end('a') };
  cue.value = end('b');
  expect(play).toHaveBeenCalledTimes(3); // a step has no tones of its own
  expect(say.mock.calls.flat()).toEqual(['Step 1.', 'End a.', 'End b.']);
  stop();
  expect(hush).toHaveBeenCalledOnce();
  cue.value = end('c');
  expect(say).toHaveBeenCalledTimes(3);
});

test('what was due before she came is not heard; what comes after is', () => {
  cue.value = end('a');
  const stop = listen();
  expect(play).not.toHaveBeenCalled();
  cue.value = end('b');
  expect(play).toHaveBeenCalledOnce();
  stop();
});

test('a cue that stood aside for another is not heard again', () => {
  const stop = listen();
  cue.value = step('1');
  cue.value = end('shine');
  cue.value = end('dry');
  cue.value = end('shine');
  expect(say.mock.calls.flat()).toEqual(['Step 1.', 'End shine.', 'End dry.']);
  stop();
});

test('off means silence, and each can be had alone', () => {
  const stop = listen();
  settings.value = { ...usualEasel, sound: false };
  cue.value = end('a');
  settings.value = usualEasel;
  cue.value = end('b');
  settings.value = { ...usualEasel, sound: false, voice: true };
  cue.value = end('c');
  expect(play.mock.calls.map(([{ kind }]) => kind)).toEqual(['end']);
  expect(say.mock.calls.flat()).toEqual(['End c.']);
  stop();
});

test('a step gone back to is read again', () => {
  const stop = listen();
  for (const key of ['1', '2', '1']) cue.value = step(key);
  expect(say.mock.calls.flat()).toEqual(['Step 1.', 'Step 2.', 'Step 1.']);
  stop();
});

test('where the sound of the wait plays on, its end is not struck a second time', () => {
  alarm.state.value = 'on';
  const stop = listen();
  cue.value = step('1');
  cue.value = { ...end('shine'), kind: 'shine' };
  cue.value = end('a');
  expect(play.mock.calls.map(([{ kind }]) => kind)).toEqual(['step', 'shine']);
  expect(shake).toHaveBeenCalledExactlyOnceWith(end('a'));
  expect(show).toHaveBeenCalledExactlyOnceWith('Firstwash', 'End a.');
  stop();
});
