import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { driveClock, easelPlace, goToStep, pressOn } from './support/easel-walk.ts';
import { smallExample } from './support/fixture-file.ts';
import { lookAt, prompt, screen, toTheEasel, toTheWashes } from './support/walk.ts';

const sizes = [
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1180, height: 820 },
  { width: 844, height: 390 },
  { width: 1440, height: 900 },
] as const;

const told = (page: Page) => screen(page, 'easel').getByTestId('cautions');

/** How far the cautions reach below what can be read without scrolling, px: 0 where all is seen. */
const hiddenPx = (page: Page): Promise<number> =>
  told(page).evaluate(async (box) => {
    for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
    const panel = box.closest('section')?.getBoundingClientRect();
    if (!panel) return Number.POSITIVE_INFINITY;
    const { top, bottom } = box.getBoundingClientRect();
    return Math.ceil(Math.max(0, panel.top - top, bottom - Math.min(panel.bottom, innerHeight)));
  });

test.use({ box: 'careful' });

test('what may hurt is told among the paints, at the easel at every size, and in print', async ({
  page,
}) => {
  await driveClock(page);
  await page.goto('./');
  await lookAt(page, await smallExample());
  await page.getByRole('link', { name: /^Whites to keep/ }).click();
  const way = (white: number, name: string) =>
    page.getByRole('group', { name: `How white ${white} is kept` }).getByRole('button', { name });
  await way(1, 'Mask').click();
  await expect(page.getByTestId('mask-care')).toContainText('not for anyone allergic to latex');
  await way(2, 'Bring back at the end').click();
  await page.getByRole('link', { name: 'Done' }).click();
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
  await page.getByRole('link', { name: 'Paints', exact: true }).click();
  const paints = screen(page, 'paints');
  await paints.getByRole('heading', { name: 'The rest of your box' }).click();
  for (const name of ['cadmium red', 'cobalt blue']) {
    const use = page.getByRole('button', { name: `Use it: ${name}`, exact: true });
    const chosen = paints
      .getByRole('region', { name: 'Chosen paints' })
      .getByRole('button', { name: new RegExp(`^${name}`, 'i') });
    await expect(use.or(chosen)).toBeVisible();
    if (await use.isVisible()) await use.click();
    await expect(chosen).toContainText(/Contains c/); // in short without a touch
    await chosen.click();
  }
  await expect(paints).toContainText(/Contains cobalt: may cause allergy/);
  await expect(paints).toContainText(/Contains cadmium and selenium: poison if swallowed/);
  await expect(paints).toContainText('the label, the safety data sheet and your local rules');
  await page.getByRole('link', { name: 'Wash plan' }).click();
  await expect(toTheEasel(page)).toBeVisible();

  await page.getByRole('link', { name: 'Plan on one page' }).click();
  const sheet = page.getByTestId('plan-sheet');
  const mind = sheet.getByRole('listitem', { includeHidden: true });
  await expect(mind.filter({ hasText: /cobalt blue contains cobalt/i })).toHaveCount(1);
  await expect(mind.filter({ hasText: /cadmium red contains cadmium/i })).toHaveCount(1);
  await expect(mind.filter({ hasText: 'latex and ammonia' })).toHaveCount(1);
  await expect(mind.last()).toContainText('the label, the safety data sheet and your local rules');
  expect(await sheet.innerText()).not.toMatch(/a sharp blade|scrape with a blade/);
  await page.getByRole('link', { name: 'Wash plan' }).click();
  await toTheEasel(page).click();
  await expect(prompt(page)).toBeVisible();

  const { of } = await easelPlace(page);
  const seen: string[] = [];
  const hidden: string[] = [];
  for (let n = 1; n <= of; n++) {
    await goToStep(page, n);
    if (!(await told(page).isVisible())) continue;
    const { title } = await easelPlace(page);
    if (title.startsWith('Mix'))
      await expect(page.getByTestId('paint-cautions')).toHaveText(
        /(?=.*cobalt blue contains cobalt)cadmium.*your local rules come first\.$/is,
      );
    seen.push(`${title}: ${await told(page).innerText()}`);
    for (const size of sizes) {
      await page.setViewportSize(size);
      if (process.env.SHOTS)
        await page.screenshot({
          path: `test-results/screens/cautions-${n}-${size.width}x${size.height}.png`,
        });
      const px = await hiddenPx(page);
      if (px > 0) hidden.push(`${title} at ${size.width} x ${size.height}: ${px} px`);
    }
    await page.setViewportSize(sizes[0]);
  }
  expect(hidden).toEqual([]);
  const all = seen.join('\n');
  expect(all).toMatch(/^Prepare: Mind: No food/);
  expect(all).toMatch(/^Mask .*latex and ammonia/m);
  expect(all).toMatch(/^Take the mask off: .*latex/m);
  const wet = seen.filter((one) => /out of the mouth; no sanding/.test(one));
  expect(wet.length).toBeGreaterThan(2); // again at every step these paints are used
  expect(wet.join()).toMatch(/Cadmium red(:| and cadmium yellow medium:)/);
  await pressOn(page);
});
