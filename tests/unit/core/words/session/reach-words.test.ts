import { expect, test } from 'vitest';
import {
  type Reach,
  reachInShort,
  reachInWords,
} from '../../../../../app/core/words/session/reach-words.ts';

const sounds: readonly Reach['sound'][] = ['off', 'tap', 'on', 'missing'];
const alarms: readonly Reach['alarm'][] = ['off', 'on', 'refused', 'stopped', 'missing'];
const notices: readonly Reach['notice'][] = ['missing', 'unasked', 'granted', 'denied', 'failed'];

test('a call with the screen off is promised only where the sound plays on', () => {
  for (const sound of sounds)
    for (const alarm of alarms)
      for (const notice of notices) {
        const said = reachInWords({ sound, alarm, notice }).join(' ');
        expect(/plays on/.test(said), said).toBe(alarm === 'on');
        expect(/nothing calls you/.test(said), said).toBe(alarm !== 'on');
        expect(/A notice is shown/.test(said), said).toBe(notice === 'granted');
        expect(/tones call you/.test(said), said).toBe(sound === 'on' || sound === 'tap');
        const short = reachInShort({ sound, alarm });
        expect(/screen off/.test(short)).toBe(alarm === 'on');
        expect(/only while the screen is on/.test(short)).toBe(alarm !== 'on' && sound === 'on');
        expect(/no sound/.test(short)).toBe(alarm !== 'on' && sound !== 'on');
      }
});

test('why it is silent is told apart', () => {
  const told = alarms.map((alarm) => reachInWords({ sound: 'on', alarm, notice: 'unasked' })[1]);
  expect(new Set(told).size).toBe(alarms.length);
});
