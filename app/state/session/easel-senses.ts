import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import { type Cue, chooseCue, nextCall } from '../../core/session/choose-cue.ts';
import {
  type EaselSettings,
  easelSettingsOf,
  usualEasel,
} from '../../core/session/easel-settings.ts';
import { passTime } from '../../core/session/easel-time.ts';
import { timeInWords } from '../../core/words/dates.ts';
import { words } from '../../core/words/plan/words.ts';
import type { Reach } from '../../core/words/session/reach-words.ts';
import { keptSignal, type SettingStore } from '../kept-signal.ts';
import type { Clock, ScreenWatch } from './device.ts';
import type { Easel } from './easel.ts';
import { type Chime, createChime, createSpeaker, type Speaker } from './sound.ts';
import { createWaitAlarm, type WaitAlarm } from './wait-alarm.ts';
import { createWaitNotice, type WaitNotice } from './wait-notice.ts';

interface HeardCuesNeeds {
  /** What is due now; null where there is nothing to hear. */
  readonly cue: ReadonlySignal<Cue | null>;
  readonly settings: ReadonlySignal<EaselSettings>;
  readonly chime: Pick<Chime, 'play' | 'shake'>;
  readonly speaker: Pick<Speaker, 'say' | 'hush'>;
  /** Where it plays on, the end of a wait is heard from it. */
  readonly alarm: Pick<WaitAlarm, 'state'>;
  readonly notice: Pick<WaitNotice, 'show'>;
}

/**
 * Each cue once, as tone and as speech, each where she asked for it. What was due before she came to
 * the easel is shown and not heard. Answers how to stop.
 */
export function playCues(needs: HeardCuesNeeds): () => void {
  const { cue, settings, chime, speaker, alarm, notice } = needs;
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
    if (due.kind === 'end') void notice.show('Firstwash', words(due.says));
    if (sound && due.kind === 'end' && alarm.state.peek() === 'on') chime.shake(due);
    else if (sound) chime.play(due);
    if (voice) speaker.say(words(due.says));
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
  /** What a screen reader is told once: the shine going, the end of a wait. Empty where nothing is due. */
  readonly told: ReadonlySignal<string>;
  /** What can call her as things stand. */
  readonly reach: ReadonlySignal<Reach>;
  /** The dark face is shown; the screen may go off while the sound plays on, else it is kept on. */
  readonly resting: ReadonlySignal<boolean>;
  /** From a tap: the dark face, and the sound that plays on where she has sound on. */
  rest(): void;
  wake(): void;
  /** From a tap: lets the sound play on with the screen off, or no longer. */
  callWithScreenOff(calls: boolean): void;
  /** From a tap: asks whether notices may be shown. */
  askForNotices(): void;
}

interface EaselSensesNeeds {
  readonly store: SettingStore;
  readonly easel: Pick<Easel, 'desk' | 'session' | 'time'>;
  readonly chime: Chime;
  readonly speaker: Speaker;
  readonly alarm: WaitAlarm;
  readonly notice: WaitNotice;
  readonly screenWatch: Pick<ScreenWatch, 'hold' | 'release'>;
}

const sample = { kind: 'end', louder: 0 } as const;

/** Names the wait: another one where its ends have moved, none where nothing dries. */
function waitOf({ phase, timer }: Easel['session']['value']): string {
  if (phase !== 'drying' || !timer) return '';
  return `${timer.key} ${timer.endsLowMs} ${timer.endsHighMs}`;
}

export function createEaselSenses(needs: EaselSensesNeeds): EaselSenses {
  const { store, easel, chime, speaker, alarm, notice, screenWatch } = needs;
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
  const sound = computed(() => {
    if (chime.state.value === 'missing') return 'missing';
    if (!settings.value.sound) return 'off';
    return chime.state.value === 'awake' ? 'on' : 'tap';
  });
  const wait = computed(() => waitOf(easel.session.value));
  const resting = signal(false);

  /** Answers how to stop. */
  function followWait(): () => void {
    const stops = [
      effect(() => {
        if (wait.value === '') resting.value = false;
        untracked(alarm.follow);
      }),
      effect(() => {
        const mayGoOff = resting.value && alarm.state.value === 'on' && cue.value?.kind !== 'end';
        if (mayGoOff) screenWatch.release();
        else if (wait.value !== '') screenWatch.hold();
      }),
    ];
    return () => {
      for (const stop of stops) stop();
      alarm.stop();
      resting.value = false;
    };
  }

  return {
    settings,
    cue,
    sound,
    canSpeak: speaker.canSpeak,
    change(how) {
      void kept.set({ ...settings.value, ...how }).catch(() => undefined); // said by the store
      if (how.sound) chime.wake(sample);
      if (how.voice) speaker.say('I will read each step to you.');
      if (how.voice === false) speaker.hush();
      if (how.sound === false) alarm.stop();
    },
    touched() {
      if (settings.peek().sound && chime.state.peek() === 'asleep') chime.wake();
    },
    listen() {
      const stops = [playCues({ cue, settings, chime, speaker, alarm, notice }), followWait()];
      return () => {
        for (const stop of stops) stop();
      };
    },
    told: computed(() => (cue.value && cue.value.kind !== 'step' ? words(cue.value.says) : '')),
    reach: computed(() => ({
      sound: sound.value,
      alarm: alarm.state.value,
      notice: notice.state.value,
    })),
    resting,
    rest() {
      resting.value = true;
      if (settings.peek().sound && alarm.state.peek() !== 'on') alarm.start();
    },
    wake() {
      resting.value = false;
    },
    callWithScreenOff(calls) {
      if (calls) alarm.start();
      else alarm.stop();
    },
    askForNotices: () => void notice.ask(),
  };
}

/** With the sound, the voices and the notices of this browser. */
export function easelSensesOf(
  needs: Pick<EaselSensesNeeds, 'store' | 'screenWatch'> & { easel: Easel; clock: Clock },
  window: Window & typeof globalThis,
): EaselSenses {
  const { easel, clock } = needs;
  /** The ends of the wait by the clock as it stands, which a page in the background looks at seldom. */
  const next = (): ReturnType<typeof nextCall> => {
    const session = easel.session.peek();
    if (session.phase !== 'drying' || !session.timer) return null;
    const steps = easel.desk.peek()?.plan.steps ?? [];
    return nextCall(session.timer, passTime(session, steps, clock.now()).atMs);
  };
  const words = () => ({
    title: `Look from ${timeInWords(clock.now().wallMs + (next()?.inMs ?? 0))} on`,
    artist: 'The sheet dries',
  });
  return createEaselSenses({
    ...needs,
    chime: createChime(window),
    speaker: createSpeaker(window),
    alarm: createWaitAlarm(window, { next, words }),
    notice: createWaitNotice(window),
  });
}
