import { expect, test } from './support/app-page.ts';
import { afterTap, driveClock, pressOn } from './support/easel-walk.ts';
import { easelOf } from './support/planned-painting.ts';
import { keptRows, savedWord } from './support/walk.ts';

test('what a scrap tells of a paint is kept over a reload, stands in the box, and is reset there', async ({
  page,
}) => {
  await page.goto('./');
  await easelOf(page, 'small example');
  await driveClock(page);
  const scrap = page.getByTestId('scrap');
  while ((await scrap.count()) === 0) await pressOn(page);
  const mix = scrap.locator('strong');
  while (!(await mix.innerText()).includes(', ')) {
    await scrap.getByRole('button', { name: /^Puddle/ }).tap();
  }
  const learned = scrap.getByText(
    /^Your .* stronger than reckoned: .* less of it \(by a fifth\)\.$/,
  );
  const unexplained = scrap.getByText('nothing is kept');
  for (const hue of ['blue', 'yellow', 'red', 'green']) {
    const button = scrap.getByRole('button', { name: `Too ${hue}` });
    await button.press('Enter');
    await expect(button).toHaveAttribute('aria-pressed', 'true');
    await expect(learned.or(unexplained)).toBeVisible();
    if (await learned.isVisible()) break;
    await afterTap(page);
  }
  await expect(learned).toBeInViewport();
  await expect(savedWord(page)).toHaveText('saved');

  await page.reload();
  await page.goto('./#/box');
  const list = page.getByRole('region', { name: 'Corrected by your scraps and sheets' });
  await expect(list).toContainText('plans use less of it (by a fifth)');
  await list.getByRole('button', { name: /^Reset the strength of/ }).tap();
  await expect(list).toHaveCount(0);
  await keptRows(page); // is read only when what was tapped before is written
  await page.reload();
  await expect(page.getByRole('region', { name: 'What you own' })).toBeVisible();
  await expect(list).toHaveCount(0);
});
