import { expect, test } from 'vitest';
import {
  chimeTones,
  easelSettingsOf,
  offlineVoice,
  shakes,
  usualEasel,
} from '../../../../app/core/session/easel-settings.ts';

const ends = ([0, 1, 2, 3] as const).map((louder) => chimeTones({ kind: 'end', louder }));

test('each reminder is louder and longer than the one before, and none is over full', () => {
  for (let i = 1; i < ends.length; i++) {
    expect(ends[i]?.length).toBeGreaterThan(ends[i - 1]?.length ?? 0);
    expect(ends[i]?.[0]?.loudness).toBeGreaterThan(ends[i - 1]?.[0]?.loudness ?? 1);
  }
  for (const { loudness, lengthSeconds } of ends.flat()) {
    expect(loudness).toBeLessThanOrEqual(1);
    expect(lengthSeconds).toBeGreaterThan(0);
  }
});

test('the shine is softer than any end, a step has no tone', () => {
  const [shine] = chimeTones({ kind: 'shine', louder: 0 });
  expect(shine?.loudness).toBeLessThan(ends[0]?.[0]?.loudness ?? 0);
  expect(chimeTones({ kind: 'step', louder: 0 })).toEqual([]);
});

test('it shakes as often as it sounds', () => {
  expect(shakes({ kind: 'end', louder: 2 })).toHaveLength(2 * (ends[2]?.length ?? 0));
});

test('the clock is heard unless she turns it off; nothing is read aloud before she asks for it', () => {
  expect(easelSettingsOf(null)).toEqual(usualEasel);
  expect(usualEasel).toMatchObject({ sound: true, voice: false });
});

test.each([[undefined], ['loud'], [7], [[]], [{ sound: 'yes', voice: 1, hand: 'both' }]])(
  'what can not be understood is left out: %j',
  (kept) => {
    expect(easelSettingsOf(kept)).toEqual(usualEasel);
  },
);

test('what was kept comes back', () => {
  const kept = { sound: true, voice: true, hand: 'left', letterKeys: false } as const;
  expect(easelSettingsOf({ ...kept, more: 1 })).toEqual(kept);
});

const voice = (lang: string, localService: boolean, isDefault = false) => ({
  lang,
  localService,
  default: isDefault,
});

test('a voice that needs a network is never taken', () => {
  expect(offlineVoice([voice('en-GB', false, true)])).toBeNull();
  expect(offlineVoice([])).toBeNull();
});

test('only one that reads English; of several the default', () => {
  const [german, british, american] = [
    voice('de-DE', true, true),
    voice('en-GB', true),
    voice('en_US', true, true),
  ];
  expect(offlineVoice([german])).toBeNull();
  expect(offlineVoice([german, british])).toBe(british);
  expect(offlineVoice([german, british, american])).toBe(american);
});
