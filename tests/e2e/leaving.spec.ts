import type { CDPSession, Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { planOf } from './support/planned-painting.ts';
import { prompt, screen, toTheEasel } from './support/walk.ts';

/** Nodes the page still holds once its garbage is collected. */
async function heldNodes(devtools: CDPSession): Promise<number> {
  await devtools.send('HeapProfiler.collectGarbage');
  const { metrics } = await devtools.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'Nodes')?.value ?? 0;
}

async function toAndFro(page: Page): Promise<void> {
  await page.evaluate(() => history.back());
  await expect(screen(page, 'plan')).toBeVisible();
  await page.evaluate(() => history.forward());
  await expect(prompt(page)).toBeVisible(); // left as soon as it stands
}

test('an easel left as soon as it stands, again and again, holds none of its screens', async ({
  page,
  context,
}) => {
  await page.goto('./');
  await planOf(page, 'small example');
  await toTheEasel(page).click();
  await expect(prompt(page)).toBeVisible();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Performance.enable');
  const rounds = 8;
  for (let i = 0; i < 2; i++) await toAndFro(page);
  const before = await heldNodes(devtools);
  for (let i = 0; i < rounds; i++) await toAndFro(page);
  // A screen of the easel has over 40 nodes: (own) count; of eight screens not one may be left.
  await expect.poll(async () => (await heldNodes(devtools)) - before).toBeLessThan(40);
});
