import { computed, effect, type ReadonlySignal } from '@preact/signals';
import { type Cue, chooseCue } from '../../core/session/choose-cue.ts';
import {
  type EaselSettings,
  easelSettingsOf,
  usualEasel,
} from '../../core/session/easel-settings.ts';
import { keptSignal, type SettingStore } from '../kept-signal.ts';
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
    const due = cue.value;
    if (!due) return;
    const isNew = due.kind === 'step' ? due.key !== spokenStep : !heard.has(due.key);
    if (due.kind === 'step') spokenStep = due.key;
    else heard.add(due.key);
    const comesLate = isFirst && due.kind !== 'step';
    isFirst = false;
    if (!isNew || comesLate) return;
    const { sound, voice } = settings.peek();
    if (sound) chime.play(due);
    if (voice) speaker.say(due.words);
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
  readonly store: SettingStore;
  readonly easel: Pick<Easel, 'desk' | 'session' | 'time'>;
  readonly chime: Chime;
  readonly speaker: Speaker;
}

const sample = { kind: 'end', louder: 0 } as const;

export function createEaselSenses({ store, easel, chime, speaker }: EaselSensesNeeds): EaselSenses {
  const kept = keptSignal(
    store,
    'easel',
    // What she changed before it was there counts.
    (stored, set) => (set === usualEasel ? easelSettingsOf(stored) : set),
    usualEasel,
  );
  const settings = kept.current;
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
      void kept.set({ ...settings.value, ...how }).catch(() => undefined); // said by the store
      if (how.sound) chime.wake(sample);
      if (how.voice) speaker.say('I will read each step to you.');
      if (how.voice === false) speaker.hush();
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
