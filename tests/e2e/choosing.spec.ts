import { accessibilityFaults } from './support/accessibility.ts';
import { expect, test } from './support/app-page.ts';
import { photograph } from './support/fixture-file.ts';
import { picture, screen, toTheEasel, toTheWashes } from './support/walk.ts';

test('several photos side by side in grey, each with a sentence; one is painted, the others put away', async ({
  page,
}) => {
  await page.goto('./');
  const two = [photograph('mountain-snow.jpg'), photograph('forest-stream.jpg')];
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
    .filter({ hasText: 'forest-stream' })
    .getByRole('button', { name: 'Paint this one' })
    .click();
  await expect(screen(page, 'look')).toBeVisible();
  await page.goto('./#/');
  await expect(page.getByText('Continue forest-stream')).toBeVisible();
  await expect(page.getByText('mountain-snow was taken away')).toBeVisible();
});

test('a picture only studied gets values but no plan, until she wants to paint it', async ({
  page,
}) => {
  await page.goto('./');
  await page.getByLabel('Picture to study').setInputFiles(photograph('mountain-snow.jpg'));
  await expect(page.getByTestId('sentence')).toBeVisible();
  await expect(toTheWashes(page)).toHaveCount(0);
  await page.goto('./#/');
  await expect(screen(page, 'start').getByText('study only').first()).toBeVisible();
  await page.getByText('Continue mountain-snow').click();
  await page.getByRole('button', { name: 'Paint this one too' }).click();
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
  await expect(picture(page)).toBeVisible();
});
