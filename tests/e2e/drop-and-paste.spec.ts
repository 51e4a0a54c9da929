import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { easelPlace } from './support/easel-walk.ts';
import { caseFile, smallPhoto } from './support/fixture-file.ts';
import { easelOfSmallPhoto } from './support/planned-painting.ts';
import { keptRows, lookAt, screen, toTheWashes } from './support/walk.ts';

test.use({ viewport: { width: 1280, height: 800 }, hasTouch: false, isMobile: false });

type Way = 'drop' | 'paste';

/** Hands a file over as the browser does; answers whether the page took it, else the browser would. */
function handOver(page: Page, way: Way, path: string, name: string): Promise<boolean> {
  const bytes = readFileSync(path).toString('base64');
  return page.evaluate(
    async ({ way, bytes, name }) => {
      const buffer = Uint8Array.from(atob(bytes), (sign) => sign.charCodeAt(0));
      const given = new DataTransfer();
      given.items.add(new File([buffer], name, { type: 'image/jpeg' }));
      const event =
        way === 'drop'
          ? new DragEvent('drop', { dataTransfer: given, bubbles: true, cancelable: true })
          : new ClipboardEvent('paste', { clipboardData: given, bubbles: true, cancelable: true });
      return !document.body.dispatchEvent(event);
    },
    { way, bytes, name },
  );
}

for (const way of ['drop', 'paste'] as const) {
  test(`a photo can come in by ${way}`, async ({ page }) => {
    await page.goto('./');
    await expect(screen(page, 'start')).toBeVisible();
    expect(await handOver(page, way, smallPhoto, 'meadow.jpg')).toBe(true);
    await expect(toTheWashes(page)).toBeVisible();
    await page.getByRole('link', { name: 'Paintings' }).click();
    await expect(page.getByRole('region', { name: 'Go on' })).toContainText('meadow');
  });

  test(`a file that is no photo is refused in words after ${way}`, async ({ page }) => {
    await page.goto('./');
    await expect(screen(page, 'start')).toBeVisible();
    await handOver(page, way, caseFile('text-named.jpg'), 'text.jpg');
    await expect(screen(page, 'start').getByRole('alert')).toHaveText(/not a picture/);
  });

  test(`at the easel a ${way} changes nothing and leads nowhere`, async ({ page }) => {
    await page.goto('./');
    await easelOfSmallPhoto(page);
    const before = await keptRows(page);
    expect(await handOver(page, way, smallPhoto, 'meadow.jpg')).toBe(true);
    await page.waitForTimeout(500);
    expect((await easelPlace(page)).n).toBe(1);
    expect(await keptRows(page)).toEqual(before);
  });
}

test('text dropped or pasted is left to the browser', async ({ page }) => {
  await page.goto('./');
  await lookAt(page, smallPhoto);
  const taken = await page.evaluate(() => {
    const given = new DataTransfer();
    given.setData('text/plain', '280');
    const options = { bubbles: true, cancelable: true };
    return [
      !document.body.dispatchEvent(new DragEvent('drop', { ...options, dataTransfer: given })),
      !document.body.dispatchEvent(
        new ClipboardEvent('paste', { ...options, clipboardData: given }),
      ),
    ];
  });
  expect(taken).toEqual([false, false]);
});
