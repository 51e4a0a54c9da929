import type { Cue } from './session/cue-now.ts';

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
