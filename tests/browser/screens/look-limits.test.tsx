import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { limitsOf, shareBelow } from '../../../app/screens/look/band-limits.ts';
import { LookScreen } from '../../../app/screens/look/look-screen.tsx';
import { type MadeStudy, madeStudy } from './made-study.ts';
import { pointerOn, shownGreens } from './picture-pixels.ts';
import { type Shown, shown } from './shown.ts';

let study: MadeStudy;
let screen: Shown;
const track = (): Element => page.getByTestId('limits').element();
const middles = [0.1, 0.3, 0.5, 0.7, 0.9];
const limitsNow = (): number[] => limitsOf(study.seen.value?.reading.bands ?? []);
/** Where a lightness lies along the strip, 0..1. */
const placeOf = (lightness = 0): number =>
  shareBelow(study.seen.value?.reading.lightness.histogram ?? [], lightness);

beforeEach(async () => {
  await page.viewport(390, 844);
  // Made-up pointers can't be captured by the browser; the gesture does without.
  vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);
  study = await madeStudy();
  screen = shown(<LookScreen studio={study.studio} paintingId="made" />);
  await expect.element(page.getByTestId('limits')).toBeVisible();
});
afterEach(() => {
  screen.leave();
  vi.useRealTimers();
  vi.restoreAllMocks();
});

/** However long the browser takes between two keys, they are not quiet before the test says so. */
const holdTimers = () => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });

test('the picture follows a dragged limit live, the reading once it is let go', async () => {
  await page.getByRole('button', { name: 'Few values' }).click();
  const limits = limitsNow();
  const [from = 0] = limits.slice(-1);
  const before = shownGreens(middles);
  pointerOn(track(), 'pointerdown', [placeOf(from), 0.8]);
  pointerOn(track(), 'pointermove', [placeOf(80), 0.8]);
  pointerOn(track(), 'pointermove', [placeOf(62), 0.8]); // now the orange is in the lightest band
  await expect.poll(() => shownGreens(middles)[3]).not.toBe(before[3]);
  const live = shownGreens(middles);
  expect(live[3]).toBe(live[4]);
  expect(study.decided).toEqual([]);
  pointerOn(track(), 'pointerup', [placeOf(62), 0.8]);
  expect(study.decided).toHaveLength(1);
  const [decision] = study.decided;
  if (decision?.kind !== 'limits') throw new Error('no limits were decided');
  const reached = decision.lightness.at(-1) ?? 0; // anywhere in that gap of the scale parts it alike
  expect(placeOf(reached)).toBeCloseTo(placeOf(62), 6);
  expect(decision.lightness.slice(0, -1)).toEqual(limits.slice(0, -1));
  await expect.poll(() => limitsNow().at(-1)).toBeCloseTo(reached, 9);
  await expect.poll(() => shownGreens([0.7])).toEqual(shownGreens([0.9]));
});

test('while grey is looked at, dragging brings the values', async () => {
  expect(page.getByTestId('picture').element().getAttribute('data-show')).toBe('grey');
  pointerOn(track(), 'pointerdown', [0.5, 0.8]);
  pointerOn(track(), 'pointermove', [0.52, 0.8]);
  await expect.element(page.getByTestId('picture')).toHaveAttribute('data-show', 'values');
  pointerOn(track(), 'pointerup', [0.52, 0.8]);
});

test('her limits stand until the reading has followed', async () => {
  const letGo = study.hold();
  const [first = 0] = limitsNow();
  pointerOn(track(), 'pointerdown', [placeOf(first), 0.8]);
  pointerOn(track(), 'pointermove', [placeOf(first) + 0.05, 0.8]);
  pointerOn(track(), 'pointerup', [placeOf(first) + 0.05, 0.8]);
  const slider = page.getByRole('slider').first();
  const moved = Math.round(
    study.decided[0]?.kind === 'limits' ? (study.decided[0].lightness[0] ?? 0) : 0,
  );
  expect(moved).toBeGreaterThan(Math.round(first));
  await expect.element(slider).toHaveAttribute('aria-valuenow', String(moved));
  await expect.element(page.getByText('Reading the picture again …')).toBeInTheDocument();
  letGo();
  await expect.poll(() => Math.round(limitsNow()[0] ?? 0)).toBe(moved);
  await expect.element(slider).toHaveAttribute('aria-valuenow', String(moved));
});

test('a drag the browser takes away changes nothing', async () => {
  await page.getByRole('button', { name: 'Few values' }).click();
  const before = shownGreens(middles);
  const [first = 0] = limitsNow();
  pointerOn(track(), 'pointerdown', [placeOf(first), 0.8]);
  pointerOn(track(), 'pointermove', [0.02, 0.8]);
  await expect.poll(() => shownGreens(middles)).not.toEqual(before);
  pointerOn(track(), 'pointercancel', [0.02, 0.8]);
  await expect.poll(() => shownGreens(middles)).toEqual(before);
  pointerOn(track(), 'pointermove', [0.3, 0.8]);
  pointerOn(track(), 'pointerup', [0.3, 0.8]);
  expect(study.decided).toEqual([]);
});

test('by keys: 1 L*, with Shift 5; said in words; one decision when the keys are quiet', async () => {
  const slider = page.getByRole('slider').last();
  const at = Math.round(limitsNow().at(-1) ?? 0);
  holdTimers();
  (slider.element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowRight}');
  await expect.element(slider).toHaveAttribute('aria-valuenow', String(at + 1));
  await userEvent.keyboard('{Shift>}{ArrowLeft}{/Shift}');
  await expect.element(slider).toHaveAttribute('aria-valuenow', String(at - 4));
  const said = slider.element().getAttribute('aria-valuetext');
  expect(said).toMatch(/^limit between white and light, value \d\.\d$/);
  expect(study.decided).toEqual([]);
  vi.advanceTimersByTime(1000);
  expect(study.decided).toHaveLength(1);
});

test('limits are held apart, at Home and at End', async () => {
  const slider = page.getByRole('slider').nth(1);
  const [low = 0, , high = 0] = limitsNow();
  holdTimers();
  (slider.element() as HTMLElement).focus();
  await userEvent.keyboard('{Home}');
  await expect.element(slider).toHaveAttribute('aria-valuenow', String(Math.round(low + 2)));
  await userEvent.keyboard('{End}');
  await expect.element(slider).toHaveAttribute('aria-valuenow', String(Math.round(high - 2)));
});

test('the picture sets the values again, by one button', async () => {
  const proposed = limitsNow();
  const button = page.getByRole('button', { name: 'Set the values by the picture' });
  await expect.element(button).not.toBeInTheDocument();
  (page.getByRole('slider').first().element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowRight}');
  await expect.element(button).toBeInTheDocument();
  await expect.element(page.getByText('The limits between the values are your own.')).toBeVisible();
  await button.click();
  await expect.poll(limitsNow).toEqual(proposed);
  expect(study.decided.at(-1)?.kind).toBe('bands');
  await expect.element(button).not.toBeInTheDocument();
});

test('a reading kept from before, without its lightness, still takes a limit', async () => {
  const { lightnessMap: _, ...old } = study.seen.value ?? (undefined as never);
  study.seen.value = old;
  await expect.element(page.getByRole('slider').first()).toBeInTheDocument();
  (page.getByRole('slider').first().element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowRight}');
  await expect.poll(() => study.decided).toHaveLength(1);
});
