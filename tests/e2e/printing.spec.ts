import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { driveClock, easelPlace, mainButton, pressOn } from './support/easel-walk.ts';
import { smallPhoto } from './support/fixture-file.ts';
import { easelOfSmallPhoto, planOf } from './support/planned-painting.ts';
import { screen } from './support/walk.ts';

/** Pages of a PDF as Chromium writes it: its page objects are not compressed (ISO 32000-1, 7.7.3.3). */
const pageCount = (pdf: Buffer): number =>
  pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

/** One after the other: the browser prints one thing at a time. */
async function printed(page: Page): Promise<number[]> {
  const counts: number[] = [];
  for (const format of ['A4', 'Letter'] as const)
    counts.push(pageCount(await page.pdf({ format })));
  return counts;
}

/** CSS px of a millimetre in print. */
const pxPerMm = 96 / 25.4;

test('the drawing is saved and printed at true size, the plan on one page', async ({
  page,
  folder,
}) => {
  await page.goto('./');
  await planOf(page, 'small example');
  await page.getByRole('link', { name: 'Drawing to transfer' }).click();
  await expect(page.getByTestId('drawing')).toBeVisible();

  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toMatch(/-drawing\.svg$/);
  await saved.saveAs(join(folder, 'drawing.svg'));
  const file = readFileSync(join(folder, 'drawing.svg'), 'utf8');
  expect(file).toMatch(/ width="381mm" height="279mm" viewBox="0 0 381 279"/);
  expect(file.match(/d="M/g)?.length).toBeGreaterThan(4);

  // A quarter sheet: two by two pages, on either paper.
  await expect(page.getByRole('button', { name: 'Print 4 pages' })).toBeEnabled();
  expect(await printed(page)).toEqual([4, 4]);
  await page.emulateMedia({ media: 'print' });
  const barPx = await page
    .getByTestId('scale-bar')
    .first()
    .evaluate((bar: SVGPathElement) => bar.getBBox().width * (bar.getScreenCTM()?.a ?? 0));
  expect(barPx / pxPerMm).toBeCloseTo(100, 1);
  await expect(page.getByRole('main')).toBeHidden();
  await page.emulateMedia({ media: null });

  await page.getByRole('link', { name: 'Wash plan' }).click();
  await page.getByRole('link', { name: 'Plan on one page' }).click();
  const sheet = page.getByTestId('plan-sheet');
  await expect(sheet.getByRole('heading', { name: /Last look/, includeHidden: true })).toHaveCount(
    1,
  );
  const over = await sheet.evaluate((box) => {
    const content = box.firstElementChild as HTMLElement;
    return {
      room: box.clientHeight,
      needs: content.scrollHeight,
      wide: content.scrollWidth - box.clientWidth,
    };
  });
  expect(over.needs).toBeLessThanOrEqual(over.room);
  expect(over.needs).toBeGreaterThan(over.room / 2);
  expect(over.wide).toBeLessThanOrEqual(0);
  expect(await printed(page)).toEqual([1, 1]);

  // For a class: a second page with the photo, the values and a picture of where for every step that paints.
  await page.getByRole('checkbox', { name: /^For a class/ }).check();
  const handout = page.getByTestId('handout-sheet');
  const pictures = await sheet.locator('canvas').count();
  await expect(handout.locator('canvas')).toHaveCount(2 + pictures);
  await expect(handout).toContainText(/A (mostly|half|burnt|ultramarine|arylide)/);
  const fits = await handout.evaluate((box) => ({
    room: box.clientHeight,
    needs: (box.firstElementChild as HTMLElement).scrollHeight,
    wide: (box.firstElementChild as HTMLElement).scrollWidth - box.clientWidth,
  }));
  expect(fits.needs).toBeLessThanOrEqual(fits.room);
  expect(fits.needs).toBeGreaterThan(fits.room / 2);
  expect(fits.wide).toBeLessThanOrEqual(0);
  expect(await printed(page)).toEqual([2, 2]);
  if (process.env.SHOTS)
    await page.pdf({
      format: 'A4',
      path: join(import.meta.dirname, '../../test-results/handout.pdf'),
    });
});

test('the record is printed as one page, with what she worked from, planned and painted', async ({
  page,
}) => {
  await driveClock(page);
  await page.goto('./');
  await easelOfSmallPhoto(page);
  for (;;) {
    const { n, of } = await easelPlace(page);
    const isLast = n === of && (await mainButton(page).innerText()) === 'Finish';
    await pressOn(page);
    if (isLast) break;
  }
  await page.locator('main input[type=file]').first().setInputFiles(smallPhoto); // asked for at the end
  await expect(screen(page, 'easel')).toContainText('It stands in the record.');
  await page.getByRole('link', { name: 'See the record' }).click();
  await expect(page.getByRole('img', { name: 'The painting' })).toBeVisible();
  const sheet = page.getByTestId('record-page');
  await expect(sheet.locator('canvas, img')).toHaveCount(3);
  const over = await sheet.evaluate((box) => ({
    room: box.clientHeight,
    needs: (box.firstElementChild as HTMLElement).scrollHeight,
    wide: (box.firstElementChild as HTMLElement).scrollWidth - box.clientWidth,
  }));
  expect(over.needs).toBeLessThanOrEqual(over.room);
  expect(over.wide).toBeLessThanOrEqual(0);
  expect(await printed(page)).toEqual([1, 1]);
});

/** What is drawn on the pages: the content of every compressed stream of text (ISO 32000-1, 7.3.8 and 7.4.4). */
function drawnOn(pdf: Buffer): string[] {
  const streams: string[] = [];
  for (let at = pdf.indexOf('stream\n'); at >= 0; at = pdf.indexOf('stream\n', at + 7)) {
    if (pdf.subarray(at - 3, at).toString() === 'end') continue;
    try {
      const drawn = inflateSync(pdf.subarray(at + 7, pdf.indexOf('endstream', at))).toString(
        'latin1',
      );
      if (/ cm\b/.test(drawn)) streams.push(drawn);
    } catch {
      // A picture as JPEG, or a profile.
    }
  }
  return streams;
}

test('help is printed as words alone; a screen printed before leaves no margin to the next', async ({
  page,
}) => {
  await page.goto('./');
  await planOf(page, 'small photo');
  const plan = page.url();
  const drawing = async (): Promise<string[]> => {
    await page.getByRole('link', { name: 'Drawing to transfer' }).click();
    await expect(page.getByRole('button', { name: /^Print/ })).toBeEnabled();
    return drawnOn(await page.pdf({ format: 'A4' }));
  };
  const first = await drawing();
  expect(first.length).toBeGreaterThan(0);
  await page.getByRole('link', { name: 'Wash plan' }).click();
  await page.getByRole('link', { name: 'Mixing chart of these paints' }).click();
  await expect(page.getByRole('button', { name: 'Print it to paint' })).toBeVisible();
  expect(await printed(page)).toEqual([1, 1]);
  await page.goto('./#/about');
  await expect(page.getByTestId('version')).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('heading', { name: 'Help' })).toBeVisible();
  await expect(
    screen(page, 'about').locator('header, a, button').filter({ visible: true }),
  ).toHaveCount(0);
  await page.emulateMedia({ media: null });
  await page.goto(plan);
  expect(await drawing()).toEqual(first);
});
