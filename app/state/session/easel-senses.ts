import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { type Cue, chooseCue } from '../../core/session/choose-cue.ts';
import {
  type EaselSettings,
  easelSettingsOf,
  quietEasel,
} from '../../core/session/easel-settings.ts';
import type { Store } from '../../storage/open-store.ts';
import type { Easel } from './easel.ts';
import { type Chime, createChime, createSpeaker, type Speaker } from './sound.ts';

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
export function playCues({ cue, settings, chime, speaker }: HeardCuesNeeds): () => void {
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

/** How the easel is heard and where it stands, as she set it. */
export interface EaselSenses {
  readonly settings: ReadonlySignal<EaselSettings>;
  readonly cue: ReadonlySignal<Cue | null>;
  /** off: she has not asked for it. tap: the browser wants a tap before it sounds. */
  readonly sound: ReadonlySignal<'off' | 'tap' | 'on' | 'missing'>;
  readonly canSpeak: ReadonlySignal<boolean>;
  /** From a tap or a key. Turning a sense on gives a sample of it at once. */
  change(changed: Partial<EaselSettings>): void;
  /** Any tap or key at the easel: lets sound through again where she asked for it. */
  touched(): void;
  /** While the easel is on screen; answers how to stop. */
  listen(): () => void;
}

interface EaselSensesNeeds {
  readonly store: Pick<Store, 'setting' | 'keepSetting'>;
  readonly easel: Pick<Easel, 'desk' | 'session' | 'time'>;
  readonly chime: Chime;
  readonly speaker: Speaker;
}

const settingName = 'easel';
const sample = { kind: 'end', louder: 0 } as const;

export function createEaselSenses({ store, easel, chime, speaker }: EaselSensesNeeds): EaselSenses {
  const settings = signal(quietEasel);
  let changed = false;
  void store.setting(settingName).then(
    (kept) => {
      if (!changed) settings.value = easelSettingsOf(kept);
    },
    () => undefined, // said by the store itself; silent until she asks
  );
  const due = computed(() =>
    easel.desk.value
      ? chooseCue(easel.session.value, easel.desk.value.plan.steps, easel.time.value)
      : null,
  );
  let last: Cue | null = null;
  /** The same cue stays the same object while the clock ticks: nothing is done again for it. */
  const cue = computed(() => {
    const next = due.value;
    if (next?.key !== last?.key) last = next;
    return last;
  });
  return {
    settings,
    cue,
    sound: computed(() => {
      if (chime.state.value === 'missing') return 'missing';
      if (!settings.value.sound) return 'off';
      return chime.state.value === 'awake' ? 'on' : 'tap';
    }),
    canSpeak: speaker.canSpeak,
    change(how) {
      changed = true;
      settings.value = { ...settings.value, ...how };
      if (how.sound) chime.wake(sample);
      if (how.voice) speaker.say('I will read each step to you.');
      if (how.voice === false) speaker.hush();
      void store.keepSetting(settingName, settings.value).catch(() => undefined); // said by the store
    },
    touched() {
      if (settings.peek().sound && chime.state.peek() === 'asleep') chime.wake();
    },
    listen: () => playCues({ cue, settings, chime, speaker }),
  };
}

/** With the sound and the voices of this browser. */
export const easelSensesOf = (
  needs: Pick<EaselSensesNeeds, 'store' | 'easel'>,
  window: Window & typeof globalThis,
): EaselSenses =>
  createEaselSenses({ ...needs, chime: createChime(window), speaker: createSpeaker(window) });
