import { effect, type ReadonlySignal } from '@preact/signals';
import type { EaselSettings } from '../model/easel-settings.ts';
import type { Cue } from '../model/session/cue-now.ts';
import type { Chime } from './chime.ts';
import type { Speaker } from './speaker.ts';

interface HeardCuesNeeds {
  /** What is due now; null where there is nothing to hear. */
  readonly cue: ReadonlySignal<Cue | null>;
  readonly settings: ReadonlySignal<EaselSettings>;
  readonly chime: Pick<Chime, 'play'>;
  readonly speaker: Pick<Speaker, 'say' | 'hush'>;
}

/**
 * Each cue once, as tone and as speech, each where she asked for it. What was due before she came to
 * the easel is shown and not heard. Answers how to stop.
 */
export function heardCues({ cue, settings, chime, speaker }: HeardCuesNeeds): () => void {
  const heard = new Set<string>();
  let spokenStep = '';
  let isFirst = true;
  const stop = effect(() => {
    const now = cue.value;
    if (!now) return;
    const isNew = now.kind === 'step' ? now.key !== spokenStep : !heard.has(now.key);
    if (now.kind === 'step') spokenStep = now.key;
    else heard.add(now.key);
    const comesLate = isFirst && now.kind !== 'step';
    isFirst = false;
    if (!isNew || comesLate) return;
    const { sound, voice } = settings.peek();
    if (sound) chime.play(now);
    if (voice) speaker.say(now.words);
  });
  return () => {
    stop();
    speaker.hush();
  };
}
