import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { easelPlace, goToStep, pressOn } from './support/easel-walk.ts';
import { example, prompt, screen, toTheEasel, toTheWashes } from './support/walk.ts';

const sizes = [
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1180, height: 820 },
  { width: 844, height: 390 },
  { width: 1440, height: 900 },
] as const;

const told = (page: Page) => screen(page, 'easel').getByTestId('cautions');

/** Whether all of the cautions can be read without scrolling: inside the panel, the panel inside the window. */
const isSeen = (page: Page): Promise<boolean> =>
  told(page).evaluate((box) => {
    const panel = box.closest('section')?.getBoundingClientRect();
    const { top, bottom } = box.getBoundingClientRect();
    return panel !== undefined && top >= panel.top && bottom <= Math.min(panel.bottom, innerHeight);
  });

test('what may hurt is told among the paints, at the easel at every size, and in print', async ({
  page,
}) => {
  await page.goto('./');
  await example(page).click();
  await page.getByRole('link', { name: /^Whites to keep/ }).click();
  const small = page.getByTestId('small-whites');
  await small.getByRole('button', { name: 'Mask', exact: true }).click();
  await expect(small.getByTestId('mask-care')).toContainText('not for anyone allergic to latex');
  const large = screen(page, 'whites').locator('[data-white]').first();
  await large.getByRole('button', { name: 'Bring back at the end' }).click();
  await page.getByRole('link', { name: 'Done' }).click();
  await toTheWashes(page).click();
  await expect(toTheEasel(page)).toBeVisible();
  await page.getByRole('link', { name: 'Paints', exact: true }).click();
  for (const name of ['cadmium red', 'cobalt blue']) {
    const leave = page.getByRole('button', { name: /^Leave out (?!:)/ }).last();
    const use = page.getByRole('button', { name: `Use it: ${name}`, exact: true });
    if (!(await use.isEnabled())) await leave.click();
    await use.click();
    await expect(page.getByRole('button', { name: `Leave out ${name}` })).toBeVisible();
  }
  const paints = screen(page, 'paints');
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
  for (let n = 1; n <= of; n++) {
    await goToStep(page, n);
    if (!(await told(page).isVisible())) continue;
    const { title } = await easelPlace(page);
    seen.push(`${title}: ${await told(page).innerText()}`);
    for (const size of sizes) {
      await page.setViewportSize(size);
      await expect
        .poll(() => isSeen(page), `${title} at ${size.width} x ${size.height}`)
        .toBe(true);
      if (process.env.SHOTS)
        await page.screenshot({
          path: `test-results/screens/cautions-${n}-${size.width}x${size.height}.png`,
        });
    }
    await page.setViewportSize(sizes[0]);
  }
  const all = seen.join('\n');
  expect(all).toMatch(/^Prepare: Mind: Do not eat/);
  expect(all).toMatch(/^Mask .*latex and ammonia/m);
  expect(all).toMatch(/^Take the mask off: .*latex/m);
  const wet = seen.filter((one) => /out of the mouth; no sanding/.test(one));
  expect(wet.length).toBeGreaterThan(2); // again at every step these paints are used
  expect(wet.join()).toMatch(/Cadmium red/i);
  expect(wet.join()).toMatch(/cobalt blue/i);
  await pressOn(page);
});
