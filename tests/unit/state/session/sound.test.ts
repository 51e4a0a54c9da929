import { expect, test, vi } from 'vitest';
import { chimeTones } from '../../../../app/core/session/easel-settings.ts';
import { createChime } from '../../../../app/state/session/sound.ts';

/** A sound of the browser that does as told and counts what is struck. */
function soundOf(state: string, resume: () => Promise<void>) {
  const struck: number[] = [];
  const stopped: number[] = [];
  const volumes: (readonly [value: number, at: number])[][] = [];
  const node = () => {
    const volume: (readonly [number, number])[] = [];
    volumes.push(volume);
    const note = (value: number, at: number): void => void volume.push([value, at]);
    return {
      gain: { value: 0, setValueAtTime: note, exponentialRampToValueAtTime: note },
      frequency: { value: 0 },
      connect: (next: unknown) => next,
      start: (at: number) => struck.push(at),
      stop: (at: number) => stopped.push(at),
    };
  };
  const made = vi.fn();
  class Sound extends EventTarget {
    state = state;
    currentTime = 0;
    destination = {};
    createGain = node;
    createOscillator = node;
    constructor() {
      super();
      made();
    }
    async resume() {
      await resume();
      this.state = 'running';
      this.dispatchEvent(new Event('statechange'));
    }
  }
  return { Sound, struck, stopped, volumes, made };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const browser = (parts: object, navigator: object = {}) => ({ ...parts, navigator }) as never;
const end = { kind: 'end', louder: 0 } as const;

test('no sound is even opened before a tap asks for it', async () => {
  const { Sound, struck, made } = soundOf('suspended', async () => {});
  const chime = createChime(browser({ AudioContext: Sound }));
  chime.play(end);
  expect(made).not.toHaveBeenCalled();
  expect(chime.state.value).toBe('asleep');
  chime.wake(end);
  await settled();
  expect(made).toHaveBeenCalledOnce();
  expect(chime.state.value).toBe('awake');
  const sample = struck.length;
  expect(sample).toBeGreaterThan(0);
  chime.play(end);
  expect(struck.length).toBe(2 * sample);
});

test('A-TIM-8: a sound taken away that never comes back blocks nothing and is asked for again', async () => {
  const resume = vi.fn(() => new Promise<void>(() => {}));
  const { Sound, struck } = soundOf('interrupted', resume);
  const chime = createChime(browser({ AudioContext: Sound }));
  chime.wake();
  chime.play(end);
  expect(struck).toEqual([]);
  expect(chime.state.value).toBe('asleep');
  chime.wake();
  expect(resume).toHaveBeenCalledTimes(2);
  await settled();
});

test('A-TIM-9: the silent switch is asked to let it through', () => {
  const { Sound } = soundOf('suspended', async () => {});
  const audioSession = { type: 'auto' };
  createChime(browser({ AudioContext: Sound }, { audioSession })).wake();
  expect(audioSession.type).toBe('playback');
});

test('A-TIM-10: it shakes where it can, after a tap, and does without', () => {
  const vibrate = vi.fn();
  createChime(browser({}, { vibrate })).play(end);
  expect(vibrate).toHaveBeenCalledOnce();
  createChime(browser({}, { vibrate, userActivation: { hasBeenActive: false } })).play(end);
  expect(vibrate).toHaveBeenCalledOnce();
  expect(() => createChime(browser({})).play(end)).not.toThrow();
});

test('a browser without sound, or one that fails to open it, says so', () => {
  expect(createChime(browser({})).state.value).toBe('missing');
  const Broken = class {
    constructor() {
      throw new DOMException('', 'NotSupportedError');
    }
  };
  const chime = createChime(browser({ AudioContext: Broken }));
  chime.wake(end);
  expect(chime.state.value).toBe('missing');
});

test('every stroke swells from silence to its loudness and dies away before it is stopped', () => {
  const { Sound, struck, stopped, volumes } = soundOf('running', async () => {});
  createChime(browser({ AudioContext: Sound })).wake(end);
  const curves = volumes.filter((curve) => curve.length > 0);
  const tones = chimeTones(end);
  expect(curves).toHaveLength(tones.length);
  for (const [n, { atSeconds, loudness, lengthSeconds }] of tones.entries()) {
    const [first, top, last] = curves[n] ?? [];
    expect(first?.[1]).toBe(atSeconds);
    expect(top?.[0]).toBe(loudness);
    expect(last?.[1]).toBe(atSeconds + lengthSeconds);
    // 60 dB below the whole is silence; browsers refuse to swell from nothing at all.
    for (const silence of [first?.[0] ?? 0, last?.[0] ?? 0]) {
      expect(silence).toBeGreaterThan(0);
      expect(silence).toBeLessThan(0.001);
    }
    expect((top?.[1] ?? 0) - (first?.[1] ?? 0)).toBeLessThan(0.05);
    expect(struck).toContain(first?.[1]);
    expect(stopped).toContain(last?.[1]);
  }
});
