import { expect, test } from './support/app-page.ts';
import { easelButton, mainButton, pressOn } from './support/easel-walk.ts';
import { easelOfSmallPhoto } from './support/planned-painting.ts';
import { prompt, screen } from './support/walk.ts';

test('two windows show one session; one is in charge, the other follows and can take over', async ({
  page,
  context,
}) => {
  await page.goto('./');
  await easelOfSmallPhoto(page);
  const heading = (of: typeof page) => screen(of, 'easel').getByRole('heading', { level: 1 });
  const words = /goes on in another window/;

  const second = await context.newPage();
  await second.goto(page.url());
  await expect(prompt(second)).toBeVisible();
  await expect(second.getByText(words)).toBeVisible();
  await expect(mainButton(second)).toBeHidden();
  await second.keyboard.press('PageDown'); // counts for nothing here

  await page.bringToFront();
  await pressOn(page);
  await pressOn(page);
  await expect(heading(page)).toHaveText(/^3 of/);
  await expect(heading(second)).toHaveText(await heading(page).innerText());

  await second.bringToFront();
  await easelButton(second, 'Go on here').click();
  await expect(mainButton(second)).toBeVisible();
  await expect(page.getByText(words)).toBeVisible();
  await pressOn(second);
  await pressOn(second);
  await expect(heading(page)).toHaveText(await heading(second).innerText());

  await second.close();
  await expect(mainButton(page)).toBeVisible();
  await expect(heading(page)).toHaveText(/^4 of/);
});

test('what is ticked in one window is ticked in the other', async ({ page, context }) => {
  await page.goto('./#/box');
  const second = await context.newPage();
  await second.goto(page.url());
  const sienna = (of: typeof page) =>
    of.getByRole('checkbox', { name: 'I own it: burnt sienna', exact: true });
  const before = await sienna(second).isChecked();
  await sienna(page).click();
  await expect(sienna(second)).toBeChecked({ checked: !before });
});
