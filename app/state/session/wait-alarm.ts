import { type ReadonlySignal, signal } from '@preact/signals';
import { longestFileSeconds, soundFile } from '../../core/session/alarm-sound.ts';
import type { NextCall } from '../../core/session/choose-cue.ts';
import { chimeTones } from '../../core/session/easel-settings.ts';
import type { Reach } from '../../core/words/session/reach-words.ts';

/** What a wait calls for: read anew whenever a file of sound begins. */
interface Waiting {
  /** Null where nothing is to be called. */
  next(): NextCall | null;
  /** What stands on the lock screen meanwhile. */
  words(): { readonly title: string; readonly artist: string };
}

/** Plays on while the screen is off, as music does, and calls at the end of a wait. */
export interface WaitAlarm {
  readonly state: ReadonlySignal<Reach['alarm']>;
  /** Only from a tap: browsers let no sound begin by itself. */
  start(): void;
  /** The wait is another one: what plays is put right, or ends. */
  follow(): void;
  stop(): void;
}

type Sounding = Pick<
  HTMLAudioElement,
  'src' | 'play' | 'pause' | 'ended' | 'addEventListener' | 'removeAttribute'
>;

interface AlarmWindow {
  readonly Audio?: new () => Sounding;
  readonly MediaMetadata?: new (init: MediaMetadataInit) => MediaMetadata;
  readonly navigator: { readonly mediaSession?: MediaSession; readonly audioSession?: object };
  readonly document: Pick<Document, 'visibilityState' | 'addEventListener'>;
}

/**
 * One audio element (HTML) with a media session (W3C), which phones let play on. One file after the other: quiet until
 * the next call, at most `longestFileSeconds` of it; each is made when the one before ends, by the clock as it stands
 * then, so that neither a device that slept nor one that plays too slowly adds up.
 */
export function createWaitAlarm(window: AlarmWindow, waiting: Waiting): WaitAlarm {
  const { Audio, MediaMetadata } = window;
  const { mediaSession, audioSession } = window.navigator;
  const state = signal<Reach['alarm']>(Audio ? 'off' : 'missing');
  let audio: Sounding | null = null;
  let address = '';
  /** Counts files: what an older one answers counts no more. */
  let turn = 0;
  /** Between two files: what the element tells of pausing then is not somebody's wish. */
  let starting = false;

  function silence(into: Reach['alarm']): void {
    turn++;
    starting = false;
    if (state.value !== 'missing') state.value = into;
    audio?.pause();
    audio?.removeAttribute('src');
    URL.revokeObjectURL(address);
    address = '';
    if (mediaSession) {
      mediaSession.metadata = null;
      mediaSession.playbackState = 'none';
    }
  }

  function open(): Sounding | null {
    if (audio || !Audio) return audio;
    audio = new Audio();
    audio.addEventListener('ended', () => state.value === 'on' && playOn());
    audio.addEventListener('error', () => address && silence('refused'));
    audio.addEventListener('pause', () => {
      if (state.value === 'on' && !starting && !audio?.ended) silence('stopped');
    });
    for (const action of ['pause', 'stop'] as const)
      mediaSession?.setActionHandler(action, () => silence('stopped'));
    return audio;
  }

  function tellDevice(): void {
    if (!mediaSession || !MediaMetadata) return;
    mediaSession.metadata = new MediaMetadata({ ...waiting.words(), album: 'Firstwash' });
    mediaSession.playbackState = 'playing';
  }

  function playOn(): void {
    const sounding = open();
    const next = waiting.next();
    if (!sounding || !next) {
      silence('off');
      return;
    }
    const mine = ++turn;
    starting = true;
    const seconds = next.inMs / 1000;
    const calls = seconds <= longestFileSeconds;
    const tones = calls ? chimeTones({ kind: 'end', louder: next.louder }) : [];
    const file = soundFile(seconds, tones);
    const before = address;
    address = URL.createObjectURL(new Blob([...file.parts], { type: 'audio/wav' }));
    sounding.src = address;
    URL.revokeObjectURL(before);
    sounding.play().then(
      () => {
        if (mine !== turn) return;
        starting = false;
        state.value = 'on';
        tellDevice();
      },
      () => {
        if (mine === turn) silence('refused');
      },
    );
  }

  function follow(): void {
    if (state.value === 'on') playOn();
    else if (state.value !== 'missing' && !waiting.next()) state.value = 'off';
  }

  window.document.addEventListener('visibilitychange', () => {
    if (window.document.visibilityState === 'visible') follow(); // a device asleep may have held it back
  });

  return {
    state,
    follow,
    start() {
      // Else the silent switch of a phone mutes it.
      if (audioSession) Object.assign(audioSession, { type: 'playback' });
      playOn();
    },
    stop: () => silence('off'),
  };
}
