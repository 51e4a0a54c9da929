import { signal } from '@preact/signals';
import { afterEach, expect, test, vi } from 'vitest';
import { useEaselKeys } from '../../../app/screens/easel/use-easel-keys.ts';
import type { EaselViewState } from '../../../app/screens/easel/use-easel-view.ts';
import type { Easel } from '../../../app/state/easel.ts';
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

/** Keys are listened to once the screen has been painted. */
const heard = async (): Promise<void> => {
  for (let frame = 0; frame < 3; frame++) await new Promise(requestAnimationFrame);
};

afterEach(() => {
  screen.leave();
  vi.clearAllMocks();
});

test('letters and digits can be turned off, a pedal always works', async () => {
  screen = shown(<Keys />);
  await heard();
  for (const key of ['p', 'g', '2', 'PageDown', ' ', 'PageUp']) press(key);
  expect(easel.pause).toHaveBeenCalledOnce();
  expect(view.toggleGrey).toHaveBeenCalledOnce();
  expect(view.look).toHaveBeenCalledWith('reference');
  letterKeys.value = false;
  await expect.poll(() => screen.host.textContent).toBe('without');
  await heard();
  for (const key of ['p', 'g', '2', 'PageDown', ' ', 'PageUp']) press(key);
  expect(easel.pause).toHaveBeenCalledOnce();
  expect(view.toggleGrey).toHaveBeenCalledOnce();
  expect(easel.goOn).toHaveBeenCalledTimes(4);
  expect(easel.back).toHaveBeenCalledTimes(2);
});
