import { signal } from '@preact/signals';
import { afterEach, expect, test, vi } from 'vitest';
import { useEaselKeys } from '../../../app/screens/easel/use-easel-keys.ts';
import type { EaselViewState } from '../../../app/screens/easel/use-easel-view.ts';
import type { Easel } from '../../../app/state/session/easel.ts';
import { type Shown, shown } from './shown.ts';

const letterKeys = signal(true);
const easel = { goOn: vi.fn(), back: vi.fn(), pause: vi.fn() };
const view = { toggleGrey: vi.fn(), look: vi.fn() };
let screen: Shown;

function Keys() {
  useEaselKeys(easel as unknown as Easel, view as unknown as EaselViewState, letterKeys.value);
  return <p>{letterKeys.value ? 'with letters' : 'without'}</p>;
}

const press = (key: string): void =>
  void document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));

/** Keys are listened to some time after the screen has been painted: tried until a letter is heeded, or is not. */
async function listens(letters: boolean): Promise<void> {
  const pauses = (): number => {
    vi.clearAllMocks();
    for (const key of ['PageDown', 'p']) press(key);
    return easel.goOn.mock.calls.length * 10 + easel.pause.mock.calls.length;
  };
  await expect.poll(pauses).toBe(letters ? 11 : 10);
  vi.clearAllMocks();
}

afterEach(() => {
  screen.leave();
  vi.clearAllMocks();
});

test('letters and digits can be turned off, a pedal always works', async () => {
  screen = shown(<Keys />);
  await listens(true);
  for (const key of ['p', 'g', '2', 'PageDown', ' ', 'PageUp']) press(key);
  expect(easel.pause).toHaveBeenCalledOnce();
  expect(view.toggleGrey).toHaveBeenCalledOnce();
  expect(view.look).toHaveBeenCalledExactlyOnceWith('reference');
  expect(easel.goOn).toHaveBeenCalledTimes(2);
  expect(easel.back).toHaveBeenCalledOnce();
  letterKeys.value = false;
  await expect.poll(() => screen.host.textContent).toBe('without');
  await listens(false);
  for (const key of ['p', 'g', '2', 'PageDown', ' ', 'PageUp']) press(key);
  expect(easel.pause).not.toHaveBeenCalled();
  expect(view.toggleGrey).not.toHaveBeenCalled();
  expect(easel.goOn).toHaveBeenCalledTimes(2);
  expect(easel.back).toHaveBeenCalledOnce();
});
