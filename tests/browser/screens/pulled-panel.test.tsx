import { type Signal, signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { ScreenLayout } from '../../../app/ui/layout/screen-layout.tsx';
import { type Shown, shown } from './shown.ts';

let screen: Shown;
let isUp: Signal<boolean>;
const panel = (): HTMLElement =>
  page.getByRole('region', { name: 'What to do' }).element() as HTMLElement;
const frames = async (): Promise<void> => {
  for (let n = 0; n < 3; n++) await new Promise(requestAnimationFrame);
};

/** Scrolls the panel so far and waits until it has heard of it. */
async function scrollTo(px: number): Promise<void> {
  panel().scrollTop = px;
  await frames();
}

beforeEach(async () => {
  await page.viewport(390, 844);
  isUp = signal(false);
  const rows = Array.from({ length: 30 }, (_, n) => (
    <p key={n}>
      <a href="#/">Row {n + 1}</a>
    </p>
  ));
  screen = shown(
    <ScreenLayout
      name="look"
      top={<a href="#/">Before it</a>}
      picture={null}
      panel={<div>{rows}</div>}
      actions={null}
      isUp={isUp}
    />,
  );
  await expect.element(page.getByRole('link', { name: 'Row 1', exact: true })).toBeVisible();
});
afterEach(() => screen.leave());

test('the panel comes up by a real pull, not by a finger that shakes', async () => {
  await scrollTo(1);
  expect(isUp.value).toBe(false);
  await scrollTo(20);
  expect(isUp.value).toBe(false);
  await scrollTo(30);
  expect(isUp.value).toBe(true);
  expect(panel().hasAttribute('data-low')).toBe(false);
});

test('nothing moves from under what is pressed in it', async () => {
  panel().dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
  await scrollTo(40);
  expect(isUp.value).toBe(false);
  panel().dispatchEvent(new PointerEvent('pointercancel', { bubbles: true })); // it is a scroll after all
  await scrollTo(60);
  expect(isUp.value).toBe(true);
});

test('it comes up when the keys come into it, not when a link in it is pressed', async () => {
  await page.getByRole('link', { name: 'Row 2', exact: true }).click();
  await frames();
  expect(isUp.value).toBe(false);
  (page.getByRole('link', { name: 'Before it' }).element() as HTMLElement).focus();
  await userEvent.keyboard('{Tab}');
  await expect.poll(() => isUp.value).toBe(true);
});
