import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { offlineVoice } from '../model/offline-voice.ts';

/** Reads sentences aloud with a voice of this device. */
export interface Speaker {
  /** Whether there is such a voice; they may be found only after a while. */
  readonly canSpeak: ReadonlySignal<boolean>;
  /** Breaks off what is still being said. */
  say(words: string): void;
  hush(): void;
}

export function createSpeaker(window: Window & typeof globalThis): Speaker {
  const speech = 'speechSynthesis' in window ? window.speechSynthesis : null;
  const voice = signal<SpeechSynthesisVoice | null>(null);
  let saying: SpeechSynthesisUtterance | null = null; // held, else Chromium may break it off
  const look = (): void => {
    voice.value = speech && offlineVoice(speech.getVoices());
  };
  if (speech) {
    look();
    speech.onvoiceschanged = look;
  }
  return {
    canSpeak: computed(() => voice.value !== null),
    say(words) {
      if (!speech || !voice.value) return;
      speech.cancel();
      saying = new window.SpeechSynthesisUtterance(words);
      saying.voice = voice.value;
      saying.lang = voice.value.lang;
      speech.speak(saying);
    },
    hush() {
      if (saying) speech?.cancel();
      saying = null;
    },
  };
}
