import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Cue } from '../../core/session/choose-cue.ts';
import { chimeTones, offlineVoice, shakes, type Tone } from '../../core/session/easel-settings.ts';

type Sounding = Pick<Cue, 'kind' | 'louder'>;

/** Tones made here and the device's shaking. */
export interface Chime {
  /** asleep: the browser wants a tap first, after every reload anew. missing: it makes no sound. */
  readonly state: ReadonlySignal<'asleep' | 'awake' | 'missing'>;
  /** Only from a tap or a key; with something to hear at once where that is wanted. */
  wake(sample?: Sounding): void;
  /** Silent while asleep: what is late is not made up for. */
  play(sounding: Sounding): void;
  /** The device's shaking alone. */
  shake(sounding: Sounding): void;
}

function strike(context: AudioContext, { atSeconds, hertz, loudness, lengthSeconds }: Tone): void {
  const from = context.currentTime + atSeconds;
  const volume = context.createGain();
  volume.gain.setValueAtTime(0.0001, from);
  volume.gain.exponentialRampToValueAtTime(loudness, from + 0.012);
  volume.gain.exponentialRampToValueAtTime(0.0001, from + lengthSeconds);
  volume.connect(context.destination);
  for (const [partial, share] of [
    [1, 0.7],
    [2.76, 0.2], // the first overtone of a struck bar (from memory)
  ] as const) {
    const tone = context.createOscillator();
    const part = context.createGain();
    part.gain.value = share;
    tone.frequency.value = hertz * partial;
    tone.connect(part).connect(volume);
    tone.start(from);
    tone.stop(from + lengthSeconds);
  }
}

export function createChime(window: Window & typeof globalThis): Chime {
  const { navigator } = window;
  const state = signal<'asleep' | 'awake' | 'missing'>(
    'AudioContext' in window ? 'asleep' : 'missing',
  );
  let context: AudioContext | null = null;

  function openContext(): AudioContext | null {
    if (context || state.value === 'missing') return context;
    try {
      // Else the silent switch of a phone mutes the end of a wait.
      if ('audioSession' in navigator)
        Object.assign(navigator.audioSession ?? {}, { type: 'playback' });
      const made = new window.AudioContext();
      const look = (): void => {
        state.value = made.state === 'running' ? 'awake' : 'asleep';
      };
      made.addEventListener('statechange', look);
      context = made;
      look();
    } catch {
      state.value = 'missing'; // said on the screen; the clock calls by sight
    }
    return context;
  }

  /** Not waited for: it may never settle on a phone whose sound was taken by a call. */
  const resume = (sounding: AudioContext): void => {
    if (sounding.state !== 'running') void sounding.resume().catch(() => undefined);
  };

  function shake(sounding: Sounding): void {
    // Refused, and written to the console as a fault, before the first tap.
    if (navigator.userActivation?.hasBeenActive === false) return;
    if (typeof navigator.vibrate === 'function') navigator.vibrate(shakes(sounding));
  }

  return {
    state,
    shake,
    wake(sample) {
      const sounding = openContext();
      if (!sounding) return;
      resume(sounding);
      if (!sample) return;
      shake(sample);
      for (const tone of chimeTones(sample)) strike(sounding, tone);
    },
    play(sounding) {
      shake(sounding);
      if (context?.state !== 'running') return;
      for (const tone of chimeTones(sounding)) strike(context, tone);
    },
  };
}

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
