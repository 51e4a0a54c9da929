import { bandChanged } from '../support/compare/changed.ts';
import { anyScene } from '../support/compare/scene.ts';
import { accessibilityFaults } from './support/accessibility.ts';
import { expect, test } from './support/app-page.ts';
import { afterTap, driveClock, easelPlace, goToDrying, pressOn } from './support/easel-walk.ts';
import { layoutFaults } from './support/page-layout.ts';
import { keptPlan, sheetPhoto } from './support/photographed-sheet.ts';
import { example, screen, toTheEasel, toTheWashes } from './support/walk.ts';

// Sheets drawn and photographed by the tests' own means.
test.use({ serviceWorkers: 'allow' });

test('her sheet is photographed, judged, looked at, and stands in the record', async ({ page }) => {
  await driveClock(page);
  await page.goto('./');
  await example(page).click();
  await toTheWashes(page).click();
  await toTheEasel(page).click();
  await goToDrying(page);
  const { title } = await easelPlace(page);
  const kept = await keptPlan(page);
  await pressOn(page);
  const wash = kept.plan.steps.filter(({ kind }) => kind === 'wash')[0];
  if (!wash) throw new Error('no wash');
  await screen(page, 'easel').getByRole('link', { name: 'Compare' }).click();
  const compare = screen(page, 'compare');
  await expect(compare).toBeVisible();
  console.log(title, wash.title, await compare.getByLabel('Your sheet after').inputValue());
  await compare.getByRole('button', { name: 'Shiny' }).click();
  await expect(compare.getByText('Wait until the shine has gone')).toBeVisible();
  await compare.getByRole('button', { name: 'Bone dry' }).click();
  const changed = bandChanged(kept.plan, wash, 2, -9) ?? bandChanged(kept.plan, wash, 3, -9);
  const photo = await sheetPhoto(kept, wash, anyScene(1, 1600), changed?.drawing ?? {});
  await compare.getByLabel('Choose a photo').setInputFiles(photo);
  await expect(compare.getByTestId('verdict')).toBeVisible();
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await layoutFaults(page, 44)).toEqual([]);
  await afterTap(page);
});
