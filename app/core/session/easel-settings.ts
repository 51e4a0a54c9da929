import type { Cue } from './choose-cue.ts';

/** One stroke of a bell: seconds from now, hertz, loudness 0..1, seconds until it has died away. */
export interface Tone {
  readonly atSeconds: number;
  readonly hertz: number;
  readonly loudness: number;
  readonly lengthSeconds: number;
}

const loudness = [0.3, 0.5, 0.75, 1] as const;

/** What is heard of a cue: one soft stroke in the shine; at an end pairs, more and louder when late. */
export function chimeTones({ kind, louder }: Pick<Cue, 'kind' | 'louder'>): Tone[] {
  if (kind === 'step') return [];
  if (kind === 'shine') return [{ atSeconds: 0, hertz: 523, loudness: 0.18, lengthSeconds: 0.9 }];
  return Array.from({ length: 2 * (1 + louder) }, (_, i) => ({
    atSeconds: i * 0.28,
    hertz: i % 2 ? 660 : 880,
    loudness: loudness[louder],
    lengthSeconds: 0.8,
  }));
}

/** Shakes and rests, ms, in the rhythm of the tones. */
export const shakes = ({ kind, louder }: Pick<Cue, 'kind' | 'louder'>): number[] =>
  chimeTones({ kind, louder }).flatMap(() => [160, 120]);

/** What is asked of a voice; the browser's own voices fit. */
interface Voice {
  readonly lang: string;
  readonly localService: boolean;
  readonly default: boolean;
}

/** A voice of this device that reads English, or null: one that needs a network is never taken. */
export function offlineVoice<V extends Voice>(voices: readonly V[]): V | null {
  const fit = voices.filter(({ lang, localService }) => localService && /^en(?![a-z])/i.test(lang));
  return fit.find((voice) => voice.default) ?? fit[0] ?? null;
}

/** How the easel speaks to her and stands; kept on the device for all paintings. */
export interface EaselSettings {
  readonly sound: boolean;
  readonly voice: boolean;
  /** The hand she paints with. */
  readonly hand: 'left' | 'right';
  /** Letters and digits act; paging, arrows, Enter and space always do. */
  readonly letterKeys: boolean;
}

/** The clock is heard unless she turns it off; nothing is read aloud until she asks for it. */
export const usualEasel: EaselSettings = {
  sound: true,
  voice: false,
  hand: 'right',
  letterKeys: true,
};

/** What was kept, as far as it can be understood. */
export function easelSettingsOf(kept: unknown): EaselSettings {
  if (typeof kept !== 'object' || kept === null) return usualEasel;
  return {
    sound: !('sound' in kept && kept.sound === false),
    voice: 'voice' in kept && kept.voice === true,
    hand: 'hand' in kept && kept.hand === 'left' ? 'left' : 'right',
    letterKeys: !('letterKeys' in kept && kept.letterKeys === false),
  };
}
