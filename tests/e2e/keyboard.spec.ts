import type { Locator, Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { afterTap, driveClock, easelPlace, mainButton } from './support/easel-walk.ts';
import {
  example,
  picture,
  prompt,
  savedWord,
  screen,
  toTheEasel,
  toTheWashes,
} from './support/walk.ts';

test.use({ viewport: { width: 1180, height: 820 }, hasTouch: false, isMobile: false });

/** Goes there by Tab alone, as one without a mouse does; the focus must be seen on arrival. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press('Tab');
    const there = await target.evaluate((element) => element === document.activeElement);
    if (!there) continue;
    const { outlineStyle, boxShadow } = await target.evaluate((element) =>
      getComputedStyle(element),
    );
    expect(outlineStyle !== 'none' || boxShadow !== 'none', 'focus can be seen').toBe(true);
    return;
  }
  throw new Error(`Tab does not lead to ${target}.`);
}

test('A-A11-7: the whole job by keyboard alone', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await expect(example(page)).toBeVisible();
  await tabTo(page, example(page));
  await page.keyboard.press('Enter');
  await expect(toTheWashes(page)).toBeVisible();
  await tabTo(page, picture(page));
  await page.keyboard.press('Enter');
  await expect(picture(page)).toHaveAttribute('data-show', 'colour');
  await page.keyboard.press('Space');
  await expect(picture(page)).toHaveAttribute('data-show', 'grey');
  await tabTo(page, toTheWashes(page));
  await page.keyboard.press('Enter');
  await expect(toTheEasel(page)).toBeVisible();
  await tabTo(page, toTheEasel(page));
  await page.keyboard.press('Enter');
  await expect(prompt(page)).toBeVisible();

  const { of } = await easelPlace(page);
  await page.keyboard.press('g');
  await expect(picture(page)).toHaveAttribute('data-show', /-grey$/);
  await page.keyboard.press('PageDown');
  await expect.poll(async () => (await easelPlace(page)).n).toBe(2);
  await page.keyboard.press('p');
  await expect(mainButton(page)).toHaveText('Go on');
  await afterTap(page);
  await page.keyboard.press('ArrowRight');
  await expect(mainButton(page)).toHaveText('Done');
  let wentBack = false;
  while (await mainButton(page).isVisible()) {
    await afterTap(page);
    const before = await easelPlace(page);
    const word = await mainButton(page).innerText();
    await page.keyboard.press(before.n % 2 ? 'PageDown' : 'ArrowRight');
    const ends = ['Done', 'Ready to paint', 'It is bone dry'].includes(word);
    if (ends) await expect.poll(async () => (await easelPlace(page)).n).toBe(before.n + 1);
    else if (before.n < of) await expect(mainButton(page)).toHaveText('Done');
    await expect(savedWord(page)).toHaveText('saved');
    if (ends && before.n === 3 && !wentBack) {
      wentBack = true;
      await page.keyboard.press('PageUp');
      await expect.poll(async () => (await easelPlace(page)).n).toBe(3);
    }
  }
  expect(wentBack).toBe(true);
  await tabTo(page, page.getByRole('link', { name: 'See the record' }));
  await page.keyboard.press('Enter');
  await expect(screen(page, 'record')).toContainText('finished in');
});
