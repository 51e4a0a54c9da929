/** What can call her at the end of a wait, as things stand on this device. */
export interface Reach {
  readonly sound: 'off' | 'tap' | 'on' | 'missing';
  /**
   * The sound that plays on with the screen off. refused: the browser would not start it. stopped: it was playing, and
   * something else stopped it.
   */
  readonly alarm: 'off' | 'on' | 'refused' | 'stopped' | 'missing';
  /** Notices of the device. failed: allowed, and yet none could be shown. */
  readonly notice: 'missing' | 'unasked' | 'granted' | 'denied' | 'failed';
}

/** Where tones can't be made at all. */
export const noSound = 'This browser makes no sound: the clock calls by turning dark.';

const onWords: Record<Reach['sound'], string> = {
  on: 'With this screen on, tones call you.',
  tap: 'With this screen on, tones call you, once you have tapped anywhere.',
  off: 'Sound is off: the clock calls by turning dark.',
  missing: noSound,
};

const offWords: Record<Reach['alarm'], string> = {
  on: 'With the screen off, the sound plays on in silence and calls you. Pausing it there stops it.',
  off: 'With the screen off, nothing calls you yet.',
  refused: 'The sound could not be kept going: with the screen off, nothing calls you.',
  stopped:
    'Something stopped the sound, a call or another app: with the screen off, nothing calls you.',
  missing: 'With the screen off, nothing calls you.',
};

const noticeWords: Record<Reach['notice'], string> = {
  granted: 'A notice is shown too, as long as the device lets this page run.',
  denied: 'Notices are not allowed for this page; the browser’s settings can change that.',
  failed: 'A notice could not be shown: do not count on one.',
  missing: 'This browser shows no notices from here.',
  unasked: '',
};

/** What is in force, a sentence each; what is not known to work is never promised. */
export const reachInWords = ({ sound, alarm, notice }: Reach): readonly string[] =>
  [onWords[sound], offWords[alarm], noticeWords[notice]].filter((sentence) => sentence !== '');

/** The same in the one line that is always seen. */
export function reachInShort({ sound, alarm }: Pick<Reach, 'sound' | 'alarm'>): string {
  if (alarm === 'on') return 'Calls you with the screen off too';
  return sound === 'on' ? 'Calls you only while the screen is on' : 'Makes no sound as it stands';
}
