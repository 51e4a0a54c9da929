import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { WhitesScreen } from '../../../app/screens/whites/whites-screen.tsx';
import { canvasPixels } from '../support/canvas-pixels.ts';
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
  screen = shown(<WhitesScreen studio={study.studio} paintingId="made" />);
});
afterEach(() => {
  screen.leave();
  vi.restoreAllMocks();
});

const placeStage = (): HTMLElement => page.getByTestId('place-stage').element() as HTMLElement;
const strokeStage = (): HTMLElement => page.getByTestId('stroke-stage').element() as HTMLElement;
const sentence = () => page.getByTestId('whites-sentence');
const choice = (name: string) => page.getByRole('button', { name, exact: true });

function touch(x: number, y: number): void {
  const stage = placeStage();
  const { left, top, width, height } = stage.getBoundingClientRect();
  const at = { clientX: left + x * width, clientY: top + y * height };
  stage.dispatchEvent(new MouseEvent('click', { ...at, detail: 1, bubbles: true }));
}

function brush(path: readonly (readonly [number, number])[]): void {
  const stage = strokeStage();
  path.forEach((place, i) => {
    pointerOn(stage, i === 0 ? 'pointerdown' : 'pointermove', place);
  });
  pointerOn(stage, 'pointerup', path.at(-1) ?? [0, 0]);
}

/** L*-like brightness of the picture in sight at a share of its width, half way down; 0..255. */
function shade(x: number): number {
  const canvas = [...document.querySelectorAll('canvas')].find((one) => !one.hidden);
  if (!canvas) return -1;
  return canvasPixels(canvas, [x * canvas.width, canvas.height / 2, 1, 1])[1] ?? -1;
}

test('the white stripe is listed with its way, and found by a touch', async () => {
  await expect.element(sentence()).toHaveTextContent('One white: 20 % of the sheet stays paper.');
  await expect.element(page.getByText('R, paint round: 1')).toBeVisible();
  touch(0.3, 0.5);
  await expect.element(sentence()).toHaveTextContent('There is no white near that place.');
  touch(0.9, 0.5);
  await expect
    .element(page.getByRole('button', { name: /White 1(?! is)/ }))
    .toHaveAttribute('aria-pressed', 'true');
  await expect.element(page.getByTestId('ring')).toBeInTheDocument();
});

test('she chooses another way, and takes it back', async () => {
  await choice('Mask').click();
  expect(study.decided).toMatchObject([{ kind: 'white-way', way: 'mask' }]);
  const [decision] = study.decided;
  expect(decision?.kind === 'white-way' && decision.place?.[0]).toBeCloseTo(0.9, 1);
  await expect.element(page.getByText('M, mask: 1')).toBeVisible();
  await expect.element(page.getByText(/Proposed: paint round\./)).toBeVisible();
  await choice('Mask').click(); // once more changes nothing
  expect(study.decided).toHaveLength(1);
  await choice('As proposed').click();
  expect(study.decided.at(-1)).toMatchObject({ kind: 'white-way', way: null });
  await expect.element(page.getByText('R, paint round: 1')).toBeVisible();
  await choice('Undo').click();
  await expect.element(page.getByText('M, mask: 1')).toBeVisible();
});

test('one touch refuses a white, and Undo brings it back', async () => {
  const row = page.getByRole('button', { name: /White 1(?! is)/ });
  await expect.element(row.first()).toBeVisible();
  expect(document.querySelectorAll('[data-white] canvas')).toHaveLength(1); // with its small picture
  await page.getByRole('button', { name: 'White 1 is not white: paint it' }).click();
  expect(study.decided).toMatchObject([{ kind: 'white', mode: 'paint', brush: 0 }]);
  await expect.element(sentence()).toHaveTextContent('No white is left in this picture.');
  await choice('Undo').click();
  await expect.element(sentence()).toHaveTextContent('One white: 20 %');
});

test('her brush keeps a dark place white; the stroke stays until the reading has followed', async () => {
  await choice('Keep white').click();
  const letGo = study.hold();
  await expect.poll(() => shade(0.1)).toBeLessThan(40);
  brush([
    [0.08, 0.5],
    [0.12, 0.5],
  ]);
  await expect.element(page.getByTestId('unread-strokes')).toBeInTheDocument();
  expect(study.decided).toMatchObject([{ kind: 'white', mode: 'keep', brush: 0.03 }]);
  letGo();
  await expect.element(sentence()).toHaveTextContent('2 whites');
  await expect.element(page.getByTestId('unread-strokes')).not.toBeInTheDocument();
  await expect.poll(() => shade(0.1)).toBeGreaterThan(220);
  await expect.element(page.getByText(/, yours/)).toBeVisible();
  await choice('Undo').click();
  await expect.element(sentence()).toHaveTextContent('One white');
  await expect.poll(() => shade(0.1)).toBeLessThan(40);
});

test('painted over until no white is left; then a dab by keys', async () => {
  await choice('Paint over').click();
  const slider = page.getByRole('slider', { name: 'Brush' }).element() as HTMLInputElement;
  slider.focus();
  await userEvent.keyboard('{End}');
  await expect.element(page.getByText('46 mm on the sheet')).toBeVisible();
  // As wide as she likes over the whole stripe.
  brush([
    [0.8, -0.05],
    [0.9, 1],
    [0.9, 0],
    [1, 1],
    [1, 0],
    [0.82, 0],
    [0.82, 1],
  ]);
  await expect.element(sentence()).toHaveTextContent('No white is left in this picture.');
  strokeStage().focus();
  await choice('Keep white').click();
  strokeStage().focus();
  await userEvent.keyboard('{ArrowUp}{Enter}');
  expect(study.decided.at(-1)).toMatchObject({ kind: 'white', mode: 'keep' });
  await expect.element(sentence()).toHaveTextContent('One white');
});

test('a white is chosen by keys, and all that is pressed is at least 48 px', async () => {
  placeStage().focus();
  await userEvent.keyboard('{Shift>}{ArrowRight>8/}{/Shift}{Enter}');
  await expect
    .element(page.getByRole('button', { name: /White 1(?! is)/ }))
    .toHaveAttribute('aria-pressed', 'true');
  for (const one of screen.host.querySelectorAll('button, main a')) {
    if (one.closest('header')) continue;
    expect(one.getBoundingClientRect().height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
  }
});

test('grey or colour under the whites', async () => {
  const hues = (): number => {
    const canvas = [...document.querySelectorAll('canvas')].find((one) => !one.hidden);
    const [red = 0, green = 0, blue = 0] = canvas
      ? canvasPixels(canvas, [0.3 * canvas.width, 10, 1, 1])
      : [];
    return Math.max(red, green, blue) - Math.min(red, green, blue);
  };
  await expect.poll(hues).toBeGreaterThan(60);
  await choice('On grey').click();
  await expect.poll(hues).toBe(0);
});
