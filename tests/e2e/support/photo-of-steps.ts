import type { Page } from '@playwright/test';
import { paintedSheet } from '../../browser/screens/painted-sheet.ts';

/** A photo of five painted steps as a chooser hands it over, drawn by the page's own canvas. */
export async function photoOfSteps(page: Page) {
  const bytes: number[] = await page.evaluate(
    `(${paintedSheet})().then(async (file) => [...new Uint8Array(await file.arrayBuffer())])`,
  );
  return { name: 'steps.png', mimeType: 'image/png', buffer: Buffer.from(bytes) };
}
