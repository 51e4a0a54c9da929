import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { pressMs } from '../../../app/ui/pointer/press.ts';
import { PressButton } from '../../../app/ui/pointer/press-button.tsx';
import { PressPlace, usePressPlace } from '../../../app/ui/pointer/press-place.ts';
import { type Shown, shown } from './shown.ts';

const act = vi.fn();
let screen: Shown | null = null;

function Place() {
  const { place, hint } = usePressPlace();
  return (
    <PressPlace.Provider value={place}>
      <p role="status">{hint.value}</p>
      <PressButton onAct={act}>Done</PressButton>
      <p>elsewhere</p>
    </PressPlace.Provider>
  );
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  screen = shown(<Place />);
});

afterEach(() => {
  screen?.leave();
  vi.useRealTimers();
  act.mockReset();
});

const button = () => page.getByRole('button', { name: 'Done' }).element() as HTMLElement;
const hint = () => page.getByRole('status').element().textContent ?? '';

function send(kind: string, more: PointerEventInit = {}, on: Element = button()): void {
  const given = { bubbles: true, pointerType: 'touch', pointerId: 1, isPrimary: true };
  on.dispatchEvent(new PointerEvent(kind, { ...given, width: 30, height: 30, ...more }));
}

test('a press acts when its time is full, once, and its click counts for nothing', () => {
  send('pointerdown');
  vi.advanceTimersByTime(pressMs - 1);
  expect(act).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(act).toHaveBeenCalledOnce();
  vi.advanceTimersByTime(5000);
  send('pointerup');
  button().dispatchEvent(new MouseEvent('click', { bubbles: true, detail: 1 }));
  expect(act).toHaveBeenCalledOnce();
});

test('let go too soon: nothing happens, and the hint comes once', async () => {
  for (const turn of [1, 2, 3]) {
    send('pointerdown');
    vi.advanceTimersByTime(pressMs - 50);
    send('pointerup');
    button().dispatchEvent(new MouseEvent('click', { bubbles: true, detail: 1 }));
    await Promise.resolve();
    if (turn === 1) await expect.poll(hint).toMatch(/until the bar is full/);
    vi.advanceTimersByTime(6000);
    await expect.poll(hint).toBe('');
  }
  expect(act).not.toHaveBeenCalled();
});

test.each([
  [
    'another touch elsewhere',
    () => send('pointerdown', { pointerId: 2, isPrimary: false }, document.body),
  ],
  ['it spreads', () => send('pointermove', { width: 120 })],
  ['it runs off', () => send('pointermove', { clientX: 90 })],
  ['the browser takes it', () => send('pointercancel')],
])('%s while it is held: spoiled', (_name, spoil) => {
  send('pointerdown');
  spoil();
  vi.advanceTimersByTime(5000);
  expect(act).not.toHaveBeenCalled();
  for (const pointerId of [1, 2]) send('pointerup', { pointerId });
  send('pointerdown', { pointerId: 3 });
  vi.advanceTimersByTime(pressMs);
  expect(act).toHaveBeenCalledOnce(); // the next press counts
});

test('keys and a mouse act at once; a key held down acts once', async () => {
  vi.useRealTimers();
  button().focus();
  await userEvent.keyboard('{Enter}');
  await userEvent.keyboard(' ');
  expect(act).toHaveBeenCalledTimes(2);
  await userEvent.keyboard('{Enter>3}{/Enter}');
  expect(act).toHaveBeenCalledTimes(3);
  await userEvent.click(button());
  expect(act).toHaveBeenCalledTimes(4);
});
