import { expect, test } from 'vitest';
import { offlineVoice } from '../../../../app/model/offline-voice.ts';

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
