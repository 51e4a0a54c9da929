import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { driveClock, easelPlace, mainButton, pressOn } from './support/easel-walk.ts';
import { smallPhoto } from './support/fixture-file.ts';
import {
  lookAt,
  prompt,
  type ScreenName,
  screen,
  toTheEasel,
  toTheWashes,
} from './support/walk.ts';

const shown = async (page: Page, name: ScreenName, title: RegExp): Promise<void> => {
  await expect(screen(page, name)).toBeVisible();
  await expect(page).toHaveTitle(title);
  await expect(screen(page, name)).toBeFocused();
};

test('every screen has its title, and the focus once it is there', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await expect(page).toHaveTitle('Firstwash');
  for (const [link, name, title] of [
    ['About Firstwash', 'about', /^About/],
    ['Your paint box', 'box', /paint box · Firstwash$/i],
  ] as const) {
    await page.getByRole('link', { name: link }).click();
    await shown(page, name, title);
    await page.goto('./#/');
    await shown(page, 'start', /^Firstwash$/);
  }
  await lookAt(page, smallPhoto);
  await shown(page, 'look', /^Value study · .+ · Firstwash$/);
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
  await shown(page, 'plan', /^Wash plan · .+ · Firstwash$/);
  await page.getByRole('link', { name: 'Mixing chart of these paints' }).click();
  await shown(page, 'chart', /· Firstwash$/);
  await page.getByRole('link', { name: 'Wash plan' }).click(); // the second time all is there at once
  await shown(page, 'plan', /^Wash plan · /);
  await toTheEasel(page).click();
  await expect(prompt(page)).toBeVisible();
  await shown(page, 'easel', /^1 of \d+: /);
  await pressOn(page);
  await expect(page).toHaveTitle(/^2 of \d+: /);
  for (;;) {
    const { n, of } = await easelPlace(page);
    if (n === of && (await mainButton(page).innerText()) === 'Finish') break;
    await pressOn(page);
  }
  await pressOn(page);
  await expect(page).toHaveTitle(/^Finished · /);
  await page.getByRole('link', { name: 'See the record' }).click();
  await shown(page, 'record', /^Record · .+ · Firstwash$/);
  await page.getByRole('link', { name: 'Back to the plan' }).click();
  await shown(page, 'plan', /^Wash plan · /);
  await page.getByRole('link', { name: 'Record', exact: true }).click(); // never out of reach
  await shown(page, 'record', /^Record · /);
});
