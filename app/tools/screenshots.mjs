// `npm run screenshots`: takes the pictures of the manifest (icons/screenshots/) from the built app, after a screen was changed.
import { mkdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import sharp from 'sharp';
import { build, preview } from 'vite';
import { launchOptions } from '../../tests/support/chromium.mjs';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');
const folder = join(top, 'icons', 'screenshots');
const configFile = join(top, 'app', 'vite.config.ts');
/** CSS px and how many px of the picture each is. */
const narrow = { width: 360, height: 720, scale: 1.5 };
const wide = { width: 1280, height: 800, scale: 1 };

/** From the example to the first wash; `look` is called at each screen that is shown. */
async function walk(page, look) {
  const easel = page.locator('main[data-screen=easel]');
  await page.getByRole('button', { name: /The example/ }).click();
  await page.getByTestId('sentence').waitFor();
  await look('study');
  await page.getByRole('link', { name: 'Show me the washes' }).click();
  const toTheEasel = page.getByRole('link', { name: 'To the easel' });
  await toTheEasel.waitFor();
  await look('plan');
  await toTheEasel.click();
  const heading = easel.getByRole('heading', { level: 1 });
  while (!/First wash/.test(await heading.textContent())) {
    await page.waitForTimeout(500); // sooner it would be a wet finger's second tap
    await easel.getByRole('button', { name: /^(Done|Ready to paint)$/ }).click();
  }
  await look('easel');
}

await mkdir(folder, { recursive: true });
await build({ configFile, logLevel: 'warn' });
const server = await preview({ configFile, logLevel: 'warn', preview: { port: 0 } });
const browser = await chromium.launch(launchOptions());
for (const [form, { width, height, scale }, wanted] of [
  ['narrow', narrow, ['study', 'easel']],
  ['wide', wide, ['plan', 'easel']],
]) {
  const page = await browser.newPage({
    viewport: { width, height },
    deviceScaleFactor: scale,
    serviceWorkers: 'block',
  });
  page.setDefaultTimeout(0); // however slow the machine is
  await page.goto(server.resolvedUrls.local[0]);
  await walk(page, async (name) => {
    if (!wanted.includes(name)) return;
    await page.waitForTimeout(1500); // soft edges are worked out after the picture is shown
    const png = await page.screenshot();
    await sharp(png)
      .jpeg({ quality: 72, mozjpeg: true })
      .toFile(join(folder, `${name}-${form}.jpg`));
  });
  await page.close();
}
await browser.close();
await server.close();
