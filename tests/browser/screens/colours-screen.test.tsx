import { afterEach, beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { ColoursScreen } from '../../../app/screens/colours/colours-screen.tsx';
import { canvasPixels } from '../support/canvas-pixels.ts';
import { type MadeStudy, madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

let study: MadeStudy;
let screen: Shown;

beforeEach(async () => {
  await page.viewport(390, 844);
  study = await madeStudy();
  screen = shown(<ColoursScreen studio={study.studio} paintingId="made" />);
});
afterEach(() => screen.leave());

const button = (name: string | RegExp) => page.getByRole('button', { name });
const rows = () => [...screen.host.querySelectorAll('li button')] as HTMLElement[];
const pressed = () => rows().filter((row) => row.getAttribute('aria-pressed') === 'true');
const hint = () => page.getByTestId('colours-hint');

/** Touches the picture at a share of its width, half way down. */
function touch(share: number): void {
  const stage = page.getByTestId('place-stage').element();
  const { left, top, width, height } = stage.getBoundingClientRect();
  const place = { clientX: left + share * width, clientY: top + height / 2 };
  stage.dispatchEvent(new MouseEvent('click', { ...place, detail: 1, bubbles: true }));
}

/** Red, green and blue on the canvas in sight in the middle of each stripe. */
function shownColours(): number[][] {
  const canvas = [...screen.host.querySelectorAll('canvas')].find((each) => !each.hidden);
  if (!canvas) throw new Error('No picture is shown.');
  return [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => [
    ...canvasPixels(canvas, [Math.floor(share * canvas.width), 150, 1, 1]).slice(0, 3),
  ]);
}
const isGrey = (codes: number[]): boolean => Math.max(...codes) - Math.min(...codes) <= 3;

test('a colour touched in the picture is shown alone, the rest in grey', async () => {
  expect(rows().length).toBe(3);
  await expect.poll(() => shownColours().map(isGrey)).toEqual([true, false, true, false, true]);
  touch(0.3);
  await expect.element(page.getByRole('img', { name: /^Only .*blue/ })).toBeInTheDocument();
  await expect
    .poll(() => pressed().map((row) => row.textContent))
    .toEqual([expect.stringContaining('blue')]);
  await expect.poll(() => shownColours().map(isGrey)).toEqual([true, false, true, true, true]);
  touch(0.3);
  await expect.element(page.getByRole('img', { name: 'The picture in its colours' })).toBeVisible();
  await expect.poll(pressed).toEqual([]);
});

test('two made one, undone; a third colour takes the place of the first; back to the picture', async () => {
  await expect.element(button('Join')).toBeDisabled();
  for (const row of rows()) row.click();
  await expect.poll(pressed).toEqual(rows().slice(1));
  await button('Join').click();
  await expect.poll(() => rows().length).toBe(2);
  const [join] = study.decided;
  expect(join).toMatchObject({
    kind: 'families',
    edit: { join: [expect.any(Array), expect.any(Array)] },
  });
  await expect.poll(pressed).toEqual([]);
  await button('Undo').click();
  await expect.poll(() => rows().length).toBe(3);
  await expect.element(button('Reset')).toBeDisabled();

  rows()[0]?.click();
  rows()[1]?.click();
  await button('Join').click();
  await expect.poll(() => rows().length).toBe(2);
  await button('Reset').click();
  await expect.poll(() => rows().length).toBe(3);
  expect(study.decided.at(-1)).toEqual({ kind: 'families', edit: null });
});

test('what was joined is parted again; one colour throughout says so', async () => {
  touch(0.3);
  touch(0.7);
  await button('Join').click();
  await expect.poll(() => rows().length).toBe(2);
  touch(0.7);
  await button('Split').click();
  await expect.poll(() => rows().length).toBe(3);
  touch(0.3);
  await button('Split').click();
  await expect.element(hint()).toHaveTextContent(/^No second colour was found in ‘.*blue’/);
  expect(rows().length).toBe(3);
});

test('while the reading follows nothing can be joined or parted', async () => {
  touch(0.3);
  const letGo = study.hold();
  await button('Split').click();
  await expect.element(hint()).toHaveTextContent('follows in a moment');
  touch(0.3);
  await expect.element(button('Split')).toBeDisabled();
  await expect.element(button('Reset')).toBeDisabled();
  letGo();
  await expect.element(hint()).not.toHaveTextContent('follows in a moment');
});

test('by keys: the cross chooses, sliders set the smallest shapes, each wash no broader than the last', async () => {
  await expect.element(page.getByTestId('masses')).toHaveTextContent(/^Shapes to paint: \d+ in/);
  (page.getByTestId('place-stage').element() as HTMLElement).focus();
  await userEvent.keyboard('{Shift>}{ArrowLeft}{ArrowLeft}{ArrowLeft}{ArrowLeft}{/Shift}{Enter}');
  await expect.poll(() => pressed()[0]?.textContent).toContain('blue');

  await expect.element(button(/The usual sizes/)).toBeDisabled();
  const slider = page.getByRole('slider', { name: 'Second wash' });
  (slider.element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowLeft}');
  await expect
    .poll(() => study.decided.at(-1))
    .toEqual({
      kind: 'smallest',
      sizes: { firstWash: 10, second: 4, darks: 2 },
    });
  await expect.element(slider).toHaveAttribute('aria-valuetext', '4 mm');
  (slider.element() as HTMLElement).focus();
  await userEvent.keyboard('{Home}');
  await expect
    .poll(() => study.decided.at(-1))
    .toEqual({
      kind: 'smallest',
      sizes: { firstWash: 10, second: 1, darks: 1 },
    });
  await button(/The usual sizes/).click();
  await expect.element(slider).toHaveAttribute('aria-valuetext', '5 mm');
  await button('Undo').click();
  await expect.element(slider).toHaveAttribute('aria-valuetext', '1 mm');
});

test('the shapes of a wash are outlined; a slider shows those of its own', async () => {
  await button('Shapes').click();
  await expect.element(page.getByTestId('shapes-shown')).toHaveTextContent('3 shapes, outlined');
  // The light stripe is kept white; the black one goes with the blue, the only colour of the darks.
  /** The stripes before an outline. */
  const blacks = () => {
    const canvas = [...screen.host.querySelectorAll('canvas')].find((each) => !each.hidden);
    const row = canvas ? canvasPixels(canvas, [0, 150, 400, 1]) : [];
    return Array.from({ length: 400 }, (_, x) => x)
      .filter((x) => row[4 * x] === 0)
      .map((x) => Math.round(x / 80));
  };
  await expect.poll(blacks).toEqual([2, 3, 4]);
  await expect.element(page.getByTestId('place-stage')).not.toBeInTheDocument();
  await button('Darks').click();
  await expect.element(page.getByTestId('shapes-shown')).toHaveTextContent('1 shape, outlined');
  await expect.poll(blacks).toEqual([1]);

  await button('Photo').click();
  (page.getByRole('slider', { name: 'First wash' }).element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowRight}');
  await expect
    .element(page.getByRole('img', { name: 'The shapes to paint: first wash' }))
    .toBeVisible();
  await expect.element(page.getByTestId('shapes-shown')).toHaveTextContent('3 shapes, outlined');
});

test('everything to press is at least 48 px high', () => {
  const all = [...screen.host.querySelectorAll('button, main a, input')];
  expect(all.length).toBeGreaterThan(12);
  for (const one of all) {
    expect(one.getBoundingClientRect().height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
  }
});
