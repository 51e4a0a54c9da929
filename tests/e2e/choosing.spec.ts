import { accessibilityFaults } from './support/accessibility.ts';
import { expect, test } from './support/app-page.ts';
import { caseFile, smallExample, smallPhoto } from './support/fixture-file.ts';
import { picture, screen, toTheEasel, toTheWashes } from './support/walk.ts';

test('several photos side by side in grey, each with a sentence; one is painted, the others put away', async ({
  page,
}) => {
  await page.goto('./');
  const two = [smallPhoto, caseFile('patches-srgb-untagged.png')];
  await page.getByLabel('Reference photo').setInputFiles(two);
  const cards = screen(page, 'choose').getByRole('listitem');
  await expect(cards).toHaveCount(2);
  for (const card of await cards.all()) {
    await expect(card.getByRole('status')).toHaveText(/\w+ .*\./);
    await expect(card.getByTestId('picture')).toHaveAttribute('data-show', 'grey');
  }
  expect(await accessibilityFaults(page)).toEqual([]);
  await page.reload(); // nothing is lost before she has chosen
  await expect(cards).toHaveCount(2);
  await cards
    .filter({ hasText: 'patches-srgb-untagged' })
    .getByRole('button', { name: 'Paint this one' })
    .click();
  await expect(screen(page, 'look')).toBeVisible();
  await page.goto('./#/');
  await expect(page.getByText('Continue patches-srgb-untagged')).toBeVisible();
  await expect(page.getByText('exif-orient-1 was taken away')).toBeVisible();
});

test('a picture only studied gets values but no plan, until she wants to paint it', async ({
  page,
}) => {
  await page.goto('./');
  await page.getByLabel('Picture to study').setInputFiles(await smallExample());
  await expect(page.getByTestId('sentence')).toBeVisible();
  await expect(toTheWashes(page)).toHaveCount(0);
  await page.goto('./#/');
  await expect(screen(page, 'start').getByText('study only').first()).toBeVisible();
  await page.getByText('Continue Seed heads').click();
  await page.getByRole('button', { name: 'Paint this one too' }).click();
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
  await expect(picture(page)).toBeVisible();
});
