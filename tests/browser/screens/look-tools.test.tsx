import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { luminanceOfLightness } from '../../../app/core/colour/lightness.ts';
import { codeOfLinear } from '../../../app/core/colour/srgb.ts';
import type { WrittenWarning } from '../../../app/core/reading/reading.ts';
import { LookScreen } from '../../../app/screens/look/look-screen.tsx';
import { canvasPixels } from '../support/canvas-pixels.ts';
import { type MadeStudy, madeStudy, stripes } from './made-study.ts';
import { pointerOn, shownGreens } from './picture-pixels.ts';
import { type Shown, shown } from './shown.ts';

let study: MadeStudy;
let screen: Shown;
const stage = (): HTMLElement => page.getByTestId('spot-stage').element() as HTMLElement;
const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
const at = (stripe: number): readonly [number, number] => [(stripe + 0.5) / 5, 0.5];

function tap(stripe: number): void {
  pointerOn(stage(), 'pointerdown', at(stripe));
  pointerOn(stage(), 'pointerup', at(stripe));
}

beforeEach(async () => {
  await page.viewport(390, 844);
  vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);
  study = await madeStudy();
  screen = shown(<LookScreen studio={study.studio} paintingId="made" />);
  await expect.element(page.getByRole('button', { name: 'Touch for value' })).toBeVisible();
});
afterEach(() => {
  screen.leave();
  vi.restoreAllMocks();
});

test('a touched spot says its value, its L* and its colour', async () => {
  await press('Touch for value');
  pointerOn(stage(), 'pointerdown', at(2));
  await expect.element(page.getByText(/^Value 4\.9/)).toBeVisible(); // L* 50, ASTM D1535
  await expect.element(page.getByText(/L\* 50/)).toBeVisible();
  const card = page.getByTestId('isolating-card'); // beside the finger, the spot in its hole
  const steps = [...card.element().querySelectorAll(':scope > span > span')];
  expect(steps).toHaveLength(10);
  const matching = () => steps.map((step) => step.hasAttribute('data-current')).indexOf(true);
  await expect.poll(matching).toBe(4); // value 4.9 lies in the fifth step
  pointerOn(stage(), 'pointermove', at(4));
  await expect.element(page.getByText(/L\* 9[67]/)).toBeVisible();
  pointerOn(stage(), 'pointerup', at(4));
  await expect.poll(() => stage().querySelector('canvas')).toBeNull();
  await expect.element(page.getByText(/L\* 9[67]/)).toBeVisible();
});

test('every stripe has the lightness culori gives it', async () => {
  await press('Touch for value');
  for (const [i, { lightness }] of stripes.entries()) {
    tap(i);
    const text = `L* ${lightness.toFixed(0)}`;
    await expect.poll(() => page.getByTestId('spot').element().textContent).toContain(text);
    await press('Clear marks');
  }
});

test('a second spot is compared with the first, a third begins anew', async () => {
  await press('Touch for value');
  tap(3); // orange
  tap(1); // blue
  await expect
    .element(page.getByText('The second is 4 values darker, cooler, duller.'))
    .toBeVisible();
  tap(2);
  await expect.element(page.getByText('Touch a second spot to compare.')).toBeVisible();
  await expect.element(page.getByText(/^Value 4\.9/)).toBeVisible();
});

test('a strong blue is said to look lighter than it is, a grey is not', async () => {
  await press('Touch for value');
  tap(1);
  await expect.element(page.getByText(/^It looks about .* lighter than it is/)).toBeVisible();
  await press('Clear marks');
  tap(2);
  await expect.element(page.getByText(/^Value 4\.9/)).toBeVisible();
  await expect.element(page.getByText(/lighter than it is/)).not.toBeInTheDocument();
});

test('a touch the browser takes away leaves no mark', async () => {
  await press('Touch for value');
  pointerOn(stage(), 'pointerdown', at(2));
  pointerOn(stage(), 'pointercancel', at(2));
  await expect.element(page.getByText(/^Touch a spot of the picture/)).toBeVisible();
});

test('by keys: arrows move the cross, Enter marks, Escape takes the marks off', async () => {
  await press('Touch for value');
  stage().focus();
  await userEvent.keyboard('{ArrowRight}');
  await expect.element(page.getByText(/L\* 50/)).toBeVisible();
  await userEvent.keyboard('{Enter}');
  await userEvent.keyboard('{Shift>}{ArrowLeft}{ArrowLeft}{ArrowLeft}{ArrowLeft}{/Shift}');
  await expect.element(page.getByText(/^The second is 2 values darker/)).toBeVisible();
  await userEvent.keyboard('{Escape}');
  await expect.element(page.getByText(/^Touch a spot of the picture/)).toBeVisible();
});

test('in the mirror and upside down a touch finds what is seen there', async () => {
  await press('Mirror');
  await press('Touch for value');
  tap(0); // the lightest stripe is on the left now
  await expect.element(page.getByText(/L\* 9[67]/)).toBeVisible();
  await press('Upside down'); // turned round and mirrored: left is left again
  tap(0);
  await expect.element(page.getByText('Second: value 0.6, dark')).toBeVisible();
});

test('squinting takes the hardness out of edges and comes nearer to one grey', async () => {
  const steps = Array.from({ length: 41 }, (_, i) => 0.75 + i / 400); // across the border at 0.8
  await press('Squint');
  await expect.poll(() => shownGreens([0.9])[0]).toBeGreaterThan(0);
  const rise = (greens: number[]): number =>
    Math.max(...greens.slice(1).map((green, i) => Math.abs(green - (greens[i] ?? 0))));
  const half = shownGreens(steps);
  const slider = page.getByRole('slider', { name: 'Squint' });
  await userEvent.fill(slider, '100');
  await expect.poll(() => rise(shownGreens(steps))).toBeLessThan(rise(half));
  const [dark = 0, light = 0] = shownGreens([0.05, 0.95]); // painted whole: as new as the rise above
  expect(light - dark).toBeLessThan(245 - 20);
  await page.getByTestId('picture').click(); // in colour, by a tap like everywhere
  await expect.element(page.getByTestId('picture')).toHaveAttribute('data-show', 'squint');
  await expect.element(page.getByRole('button', { name: /Tap for grey/ })).toBeInTheDocument();
});

test('as in the photo and the full range stand side by side, and a tap takes one', async () => {
  const darkest = (name: string): number => {
    const canvas = page
      .getByRole('button', { name })
      .element()
      .querySelector<HTMLCanvasElement>('canvas');
    const data = canvas?.getContext('2d')?.getImageData(0, 0, 1, 1).data;
    return data?.[1] ?? -1;
  };
  const seen = study.seen.value;
  if (!seen) throw new Error('nothing was read');
  const button = page.getByRole('button', { name: 'Full range' });
  await expect.element(button).not.toBeInTheDocument(); // a picture of a wide span stays as it is
  const range = { ...seen.reading.range, lo: 40, hi: 75 };
  study.seen.value = { ...seen, reading: { ...seen.reading, range } };
  await expect.poll(() => darkest('As in the photo')).toBeGreaterThan(0); // as dark as the paints, not black
  await button.click();
  await expect.poll(() => study.decided).toEqual([{ kind: 'range', mode: 'opened' }]);
  await expect.element(button).toHaveAttribute('aria-pressed', 'true');
});

test('one sentence on top, every other warning behind one tap', async () => {
  const now = study.seen.value;
  if (!now) throw new Error('nothing was read');
  const warning = (code: WrittenWarning['code']): WrittenWarning => ({
    code,
    text: `What to do: ${code}.`,
  });
  const warnings = [warning('flat'), warning('high-key'), warning('merge')];
  study.seen.value = { ...now, reading: { ...now.reading, warnings } };
  await expect.element(page.getByTestId('sentence')).toHaveTextContent('What to do: flat.');
  await expect.element(page.getByText('What to do: merge.')).not.toBeVisible();
  await page.getByText('What else was seen').click();
  await expect.element(page.getByText('What to do: high-key.')).toBeVisible();
  await expect.element(page.getByText('What to do: merge.')).toBeVisible();
});

test('the panel is low under a large picture until it is pulled up: by scrolling, by its button, by keys', async () => {
  const panel = page.getByRole('region', { name: 'What to do' }).element();
  const height = () => panel.getBoundingClientRect().height;
  const low = height();
  expect(low).toBeLessThan(844 / 4);
  panel.scrollTo(0, 40);
  await expect.poll(height).toBeGreaterThan(low + 100);
  await press('Less');
  await expect.poll(height).toBe(low);
  expect(panel.scrollTop).toBe(0);
  const more = page.getByRole('button', { name: 'More', exact: true });
  await expect.element(more).toHaveAttribute('aria-expanded', 'false');
  (more.element() as HTMLElement).focus();
  await userEvent.keyboard('{Enter}');
  await expect.poll(height).toBeGreaterThan(low + 100);
});

test('the picture has its size before the study is there', async () => {
  const frame = () => page.getByTestId('picture').element().parentElement?.clientHeight;
  const after = frame();
  const { seen } = study;
  const read = seen.value;
  seen.value = null;
  await expect.element(page.getByRole('button', { name: 'Few values' })).toBeDisabled();
  expect(frame()).toBe(after);
  seen.value = read;
  await expect.element(page.getByRole('button', { name: 'Few values' })).toBeEnabled();
  expect(frame()).toBe(after);
});

test('few values are a notan: white is the paper, dark the darkest paint', async () => {
  const range = study.seen.value?.reading.range;
  await press('Few values');
  const codes = () => shownGreens([0.1, 0.3, 0.5, 0.7, 0.9]);
  const code = (lightness: number) => codeOfLinear(luminanceOfLightness(lightness));
  await expect.poll(() => Math.max(...codes())).toBeCloseTo(code(range?.paper ?? 0), -1);
  expect(Math.min(...codes())).toBeCloseTo(code(range?.darkest ?? 0), -1);
});

test('that the photo was cut and what a tap does is told once, one after the other', async () => {
  screen.leave();
  const told = signal<readonly string[] | null>([]);
  const toldOnce = {
    told,
    tell(what: string) {
      told.value = [...(told.value ?? []), what];
    },
  };
  const painting = study.studio.painting.value;
  if (!painting) throw new Error('no painting');
  const { reference } = painting;
  const cut = { ...reference, crop: { ...reference.crop, size: [1, 0.8] as const } };
  const studio = { ...study.studio, painting: signal({ ...painting, reference: cut }) };
  screen = shown(<LookScreen studio={studio} paintingId="made" toldOnce={toldOnce} />);
  await expect.element(page.getByText(/^Cropped to /)).toBeVisible();
  await expect.element(page.getByRole('link', { name: 'Change', exact: true })).toBeVisible();
  await press('OK');
  await expect.element(page.getByText(/^Cropped to /)).not.toBeInTheDocument();
  await expect.element(page.getByText('Tap the picture: colour')).toBeVisible();
  await page.getByTestId('picture').click();
  await expect.element(page.getByText('Tap the picture: colour')).not.toBeInTheDocument();
  expect(told.value).toEqual([`cut ${painting.id}`, 'tap']);
});

test('what a tap on the picture shows lies ready over it, unseen, before the tap', async () => {
  const ready = (): HTMLCanvasElement[] =>
    [...document.querySelectorAll<HTMLCanvasElement>('[data-testid=picture] canvas')].filter(
      (canvas) => getComputedStyle(canvas).display !== 'none' && canvas.width === 400,
    );
  await expect.poll(() => ready().length).toBe(2);
  const next = ready().find((canvas) => canvas.hidden) as HTMLCanvasElement;
  const before = getComputedStyle(next);
  expect(Number(before.opacity)).toBeGreaterThan(0);
  expect(Number(before.opacity)).toBeLessThan(1 / 510);
  const codes = [...canvasPixels(next, [120, 150, 1, 1])];
  expect(codes[3]).toBe(255);
  await page.getByTestId('picture').click();
  await expect.poll(() => ready().find((canvas) => !canvas.hidden)).toBe(next);
  expect(getComputedStyle(next).opacity).toBe('1');
  expect([...canvasPixels(next, [120, 150, 1, 1])]).toEqual(codes);
  await expect.poll(() => ready().length).toBe(2);
});

test('two quick taps for more values count twice', async () => {
  const go = study.hold();
  const more = page.getByRole('button', { name: 'One value more' });
  const before = study.seen.value?.reading.bands.length ?? 0;
  await more.click();
  await more.click();
  expect(study.decided.slice(-2)).toEqual([
    { kind: 'bands', count: before + 1 },
    { kind: 'bands', count: before + 2 },
  ]);
  go();
});
