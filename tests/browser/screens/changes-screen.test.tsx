import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { ChangesScreen } from '../../../app/screens/changes/changes-screen.tsx';
import { type MadeStudy, madeStudy } from './made-study.ts';
import { pointerOn } from './picture-pixels.ts';
import { type Shown, shown } from './shown.ts';

let study: MadeStudy;
let screen: Shown;

beforeEach(async () => {
  await page.viewport(390, 844);
  // Made-up pointers can't be captured by the browser; the gesture does without.
  vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);
  study = await madeStudy();
  screen = shown(<ChangesScreen studio={study.studio} paintingId="made" />);
});
afterEach(() => {
  screen.leave();
  vi.restoreAllMocks();
});

const stage = (): Element => page.getByTestId('stroke-stage').element();
const button = (name: string | RegExp) => page.getByRole('button', { name });
const drawn = (): number =>
  document.querySelectorAll('[data-testid=changes-drawn] [data-standing=hers]').length / 2;

function draw(path: readonly (readonly [number, number])[]): void {
  path.forEach((place, i) => {
    pointerOn(stage(), i === 0 ? 'pointerdown' : 'pointermove', place);
  });
  pointerOn(stage(), 'pointerup', path.at(-1) ?? [0, 0]);
}

const square = [
  [0.2, 0.2],
  [0.4, 0.2],
  [0.4, 0.5],
  [0.2, 0.5],
] as const;

test('a line drawn round something is kept, drawn until the reading has followed, then only listed', async () => {
  await expect.element(page.getByText('Nothing is changed yet.')).toBeVisible();
  const letGo = study.hold();
  draw(square);
  await expect.element(page.getByText('1 Left out')).toBeVisible();
  expect(drawn()).toBe(1);
  expect(study.decided).toMatchObject([{ kind: 'alter', change: 'leave-out', brush: 0 }]);
  const [first] = study.decided;
  expect(first?.kind === 'alter' && first.stroke.length).toBe(4);
  letGo();
  await expect.poll(drawn).toBe(0);
  await expect.element(page.getByText('1 Left out')).toBeVisible();
});

test('lighter and darker by the brush; each change shown and taken back by itself', async () => {
  await button('One value darker').click();
  await button('Brush').click();
  await expect.element(page.getByText('Paint over what is to be one value darker.')).toBeVisible();
  draw([
    [0.5, 0.5],
    [0.6, 0.5],
  ]);
  await button('One value lighter').click();
  draw([[0.8, 0.8]]); // a dab
  await expect.element(page.getByText('2 One value lighter')).toBeVisible();
  expect(study.decided).toMatchObject([{ change: 'darker' }, { change: 'lighter' }]);
  await expect.poll(drawn).toBe(0);
  await button('1 One value darker').click();
  expect(drawn()).toBe(1);
  await expect.element(button('1 One value darker')).toHaveAttribute('aria-pressed', 'true');
  await button('Take back 1, One value darker').click();
  await expect.element(page.getByText('1 One value lighter')).toBeVisible();
  expect(study.decided.at(-1)).toEqual({ kind: 'undo', undoes: '1' });
  await button('Undo').click();
  await expect.element(page.getByText('Nothing is changed yet.')).toBeVisible();
});

test('an oval is laid down by keys; a tap is no line round anything', async () => {
  draw([[0.5, 0.5]]);
  expect(study.decided).toEqual([]);
  (stage() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowUp}{+}{Enter}');
  await expect.element(page.getByText('1 Left out')).toBeVisible();
});

test('the ground needs a subject; with one it is made plain and taken back', async () => {
  await expect.element(page.getByRole('link', { name: 'Draw round the subject' })).toBeVisible();
  const circle = { mode: 'circle', brush: 0, stroke: square } as const;
  await study.studio.decide({ kind: 'subject', ...circle });
  await button('The ground as one plain wash').click();
  expect(study.decided.at(-1)).toEqual({ kind: 'ground', plain: true });
  await expect.element(page.getByText('Values, edges and washes follow.')).toBeVisible();
  await button('The ground as one plain wash').click();
  expect(study.decided.at(-1)).toEqual({ kind: 'ground', plain: false });
});

test('everything to press is at least 48 px high', async () => {
  draw(square);
  await expect.element(page.getByText('1 Left out')).toBeVisible();
  const pressed = [...screen.host.querySelectorAll('main button, main a')];
  expect(pressed.length).toBeGreaterThan(10);
  for (const one of pressed) {
    expect(one.getBoundingClientRect().height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
  }
});
