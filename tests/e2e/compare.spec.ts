import type { Page } from '@playwright/test';
import { bandChanged } from '../support/compare/changed.ts';
import { anyScene } from '../support/compare/scene.ts';
import { accessibilityFaults } from './support/accessibility.ts';
import { expect, test } from './support/app-page.ts';
import { driveClock, goToDrying, pressOn } from './support/easel-walk.ts';
import { layoutFaults } from './support/page-layout.ts';
import { keptPlan, sheetPhoto } from './support/photographed-sheet.ts';
import { easelOf } from './support/planned-painting.ts';
import { readyOffline } from './support/ready-offline.ts';
import { prompt, screen } from './support/walk.ts';

// Sheets drawn and photographed by the tests' own means.
test.use({ serviceWorkers: 'allow' });

/** Focused and pressed, as by keys alone. */
async function pressKey(page: Page, name: string | RegExp, key = 'Enter'): Promise<void> {
  await screen(page, 'compare').getByRole('button', { name }).first().focus();
  await page.keyboard.press(key);
}

test('offline and by keys: her sheet is photographed, judged, looked at, mended in the plan, and stands in the record', async ({
  page,
  context,
}) => {
  await driveClock(page);
  await page.goto('./');
  await readyOffline(page);
  await context.setOffline(true);
  await easelOf(page, 'small example');
  await goToDrying(page);
  const kept = await keptPlan(page);
  await pressOn(page);
  const wash = kept.plan.steps.find(({ kind }) => kind === 'wash');
  if (!wash) throw new Error('no wash');
  await screen(page, 'easel').getByRole('link', { name: 'Compare' }).focus();
  await page.keyboard.press('Enter');
  const compare = screen(page, 'compare');
  await expect(compare.getByLabel('Your sheet after')).toHaveValue(wash.key);
  expect(await accessibilityFaults(page)).toEqual([]);
  await pressKey(page, 'Shiny');
  await expect(compare.getByText('Wait until the shine has gone')).toBeVisible();
  await expect(compare.getByLabel('Choose a photo')).toHaveCount(0);
  await pressKey(page, 'Bone dry');

  const changed = bandChanged(kept.plan, wash, 2, -9) ?? bandChanged(kept.plan, wash, 3, -9);
  const photo = await sheetPhoto(kept, wash, anyScene(1, 1000), changed?.drawing ?? {});
  await compare.getByLabel('Choose a photo').setInputFiles(photo);
  const verdict = compare.getByTestId('verdict');
  await expect(verdict).toHaveText(/worth doing$/);
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await layoutFaults(page, 44)).toEqual([]);

  // Split, blinked and in grey, by keys.
  const shown = compare.getByTestId('compared');
  await expect(shown).toHaveAttribute('data-shows', 'planned painting');
  const stage = compare.getByTestId('split-stage');
  await stage.focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  await expect(shown).toHaveAttribute('data-shows', 'planned-grey painting-grey');
  await pressKey(page, 'Reference, painting');
  await expect(shown).toHaveAttribute('data-shows', 'reference-grey painting-grey');
  await pressKey(page, 'Blink');
  await expect(compare.getByRole('button', { name: 'Show the reference' })).toBeVisible();
  await pressKey(page, 'Show the reference');
  await expect(compare.getByRole('button', { name: 'Show your painting' })).toBeVisible();
  await pressKey(page, 'Across the room');

  // Corners by keys, and compared again; a reload loses nothing of it.
  await pressKey(page, 'Corners');
  await pressKey(page, /^Corner 2, upper right/, 'Shift+ArrowRight');
  await expect(compare.getByTestId('magnifier')).toBeVisible();
  expect(await accessibilityFaults(page)).toEqual([]);
  await pressKey(page, 'Compare');
  await expect(verdict).toBeVisible();
  await page.reload();
  await expect(verdict).toHaveText(/worth doing$/);

  // Taken into the plan, and taken out again.
  await pressKey(page, 'Take it into the plan');
  await expect(compare.getByText('It stands in the plan of this sheet')).toBeVisible();
  await pressKey(page, 'Take it out again');
  await expect(compare.getByText('It stands in the plan of this sheet')).toHaveCount(0);
  await pressKey(page, 'Take it into the plan');
  await expect(compare.getByText('It stands in the plan of this sheet')).toBeVisible();
  const first = await compare.getByRole('list').first().getByRole('heading').first().innerText();
  await compare.getByRole('link', { name: 'Easel' }).focus();
  await page.keyboard.press('Enter');
  await expect(prompt(page)).toBeVisible();
  const easel = screen(page, 'easel');
  // What she took is what comes next.
  await expect(easel.getByRole('heading', { level: 1 })).toContainText(`: ${first}`);
  await page.goto(page.url().replace('/easel', '/record'));
  const strip = screen(page, 'record').getByRole('list', { name: 'Your sheet, stage by stage' });
  await expect(strip.getByRole('listitem')).toHaveCount(1);
  await expect(strip).toContainText('of the sheet had its planned value');
  expect(await accessibilityFaults(page)).toEqual([]);
  await strip.getByRole('link', { name: /^Look at it again/ }).click();
  await expect(verdict).toHaveText(/worth doing$/);
});
