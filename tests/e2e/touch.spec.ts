import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { afterTap, driveClock, easelButton, easelPlace, mainButton } from './support/easel-walk.ts';
import { easelOfSmallPhoto } from './support/planned-painting.ts';
import { glassOf, middleOf } from './support/touch.ts';
import { picture, savedWord, screen } from './support/walk.ts';

const stage = (page: Page) => page.getByTestId('zoom-stage');
const standing = async (page: Page) => ({
  ...(await easelPlace(page)),
  word: await mainButton(page).innerText(),
});
const pageScale = (page: Page) => page.evaluate(() => window.visualViewport?.scale);

test('the whole session by touch alone', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await easelOfSmallPhoto(page);
  const glass = await glassOf(page);
  const tap = async (name: string) => glass.tap(await middleOf(easelButton(page, name)));
  for (const [name, layer] of [
    ['Value', 'band'],
    ['Edges', 'edges'],
    ['Sheet', 'sheet'],
    ['Grey', 'sheet-grey'],
    ['Photo', 'reference-grey'],
  ] as const) {
    await tap(name);
    await expect(picture(page)).toHaveAttribute('data-show', layer);
  }
  let wentBack = false;
  while (await mainButton(page).isVisible()) {
    await afterTap(page);
    const before = await standing(page);
    await glass.press(mainButton(page));
    if (before.n < before.of) await expect.poll(() => standing(page)).not.toEqual(before);
    await expect(savedWord(page)).toHaveText('saved');
    if (wentBack || !(await easelButton(page, 'Shine gone').isVisible())) continue;
    await glass.press(easelButton(page, 'Shine gone'));
    await expect(easelButton(page, 'Shine gone')).toHaveCount(0);
    const { n } = await easelPlace(page);
    await glass.press(easelButton(page, 'Back'));
    await expect.poll(async () => (await easelPlace(page)).n).toBe(n - 1);
    wentBack = true;
  }
  expect(wentBack).toBe(true);
  await glass.tap(await middleOf(page.getByRole('link', { name: 'See the record' })));
  await expect(screen(page, 'record')).toContainText('finished in');
});

test('A-TCH-3: a drop, a splash, a palm and a running drop press nothing', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await easelOfSmallPhoto(page);
  const glass = await glassOf(page);
  const before = await standing(page);
  const at = await middleOf(mainButton(page));
  const hold = (ms: number) => page.clock.runFor(ms);
  // However slow the machine is, nothing is held for longer than said.
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 60_000);

  await glass.down(at);
  await hold(300);
  await glass.up();
  await hold(1000);
  expect(await standing(page), 'short').toEqual(before);
  await expect(page.getByText('until the bar is full')).toBeVisible();
  await hold(6000);
  await expect(page.getByText('until the bar is full')).toHaveCount(0);

  await glass.down(at, { x: at.x + 80, y: at.y });
  await hold(1000);
  await glass.up();
  expect(await standing(page), 'two at once').toEqual(before);

  await glass.down({ x: 100, y: 200 });
  await glass.down({ x: 100, y: 200 }, at);
  await hold(1000);
  await glass.up();
  expect(await standing(page), 'one more while another rests').toEqual(before);

  await glass.down({ ...at, radius: 40 });
  await hold(1000);
  await glass.up();
  expect(await standing(page), 'broad').toEqual(before);

  await glass.down(at);
  await glass.move({ x: at.x, y: at.y + 60 });
  await hold(1000);
  await glass.up();
  expect(await standing(page), 'running').toEqual(before);

  await page.clock.resume();
  await glass.press(mainButton(page)); // the same finger, held still, acts
  await expect.poll(() => standing(page)).not.toEqual(before);
});

test('A-TCH-1: two fingers enlarge the picture about their middle, and not the page', async ({
  page,
}) => {
  await page.goto('./');
  await easelOfSmallPhoto(page);
  const glass = await glassOf(page);
  const { x, y } = await middleOf(stage(page));
  const grey = await picture(page).getAttribute('data-show');
  const width = async () => (await picture(page).boundingBox())?.width ?? 0;
  const whole = await width();
  await glass.down({ x: x - 30, y }, { x: x + 30, y });
  for (const half of [40, 60, 90]) await glass.move({ x: x - half, y }, { x: x + half, y });
  await glass.up();
  await expect.poll(width).toBeGreaterThan(whole * 2.8);
  expect(await width()).toBeLessThan(whole * 3.2);
  expect(await pageScale(page)).toBe(1);
  const zoomed = await picture(page).boundingBox();
  expect(Math.abs((zoomed?.x ?? 0) + (zoomed?.width ?? 0) / 2 - x)).toBeLessThan(2);

  await glass.down({ x, y });
  for (const far of [15, 30, 40]) await glass.move({ x: x + far, y });
  await glass.up();
  await expect
    .poll(async () => ((await picture(page).boundingBox())?.x ?? 0) - (zoomed?.x ?? 0))
    .toBeCloseTo(40, -0.5);
  expect(await picture(page).getAttribute('data-show'), 'a drag is no tap').toBe(grey);

  await page.setViewportSize({ width: 915, height: 412 }); // turned: it stays near
  // Until it is laid out anew, or what is touched next would be where it was before.
  await expect.poll(() => middleOf(stage(page))).not.toEqual({ x, y });
  await expect(stage(page)).toHaveAttribute('data-zoomed');
  await page.setViewportSize({ width: 412, height: 915 });
  await expect.poll(() => middleOf(stage(page))).toEqual({ x, y }); // laid out as it was
  await glass.tap(await middleOf(page.getByRole('button', { name: 'Whole picture' })));
  await expect.poll(width).toBeCloseTo(whole, 0);

  await glass.tapTwice({ x, y });
  await expect.poll(width).toBeGreaterThan(whole * 2.4);
  expect(await picture(page).getAttribute('data-show'), 'two taps: as before').toBe(grey);
  await glass.tapTwice({ x, y });
  await expect.poll(width).toBeCloseTo(whole, 0);
});
