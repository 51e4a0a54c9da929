import type { Browser, Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { faultsAtEverySize } from './support/every-size.ts';
import { boxes, withBox } from './support/few-paints.ts';
import { planOf } from './support/planned-painting.ts';
import { keptRows, screen, toTheEasel } from './support/walk.ts';

// A teacher's plan, handed on as a copy of one painting, opens on a device where another box is ticked.

/** Path of a copy of the teacher's painting with its plan. */
async function copyOfTeachers(page: Page, folder: string): Promise<string> {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await planOf(page, 'small photo');
  const id = /painting\/([^/]+)/.exec(page.url())?.[1];
  await page.goto(`./#/copies/${id}`);
  const copies = screen(page, 'copies');
  await expect(copies.getByRole('combobox')).toHaveValue(String(id));
  await copies.getByRole('button', { name: 'Make the copy' }).click();
  const coming = page.waitForEvent('download');
  await copies.getByRole('button', { name: 'Save it as a file' }).click();
  const file = `${folder}/plan.zip`;
  await (await coming).saveAs(file);
  return file;
}

/** A student's device, where the copy was brought back, at its plan. */
async function studentWith(file: string, browser: Browser, url: string): Promise<Page> {
  const context = await browser.newContext({ baseURL: url, viewport: { width: 412, height: 915 } });
  await withBox(context, boxes.careful);
  const student = await context.newPage();
  await student.goto('./#/copies');
  await student.getByLabel('Copy to bring back').setInputFiles(file);
  await student.getByRole('button', { name: 'Bring it back' }).click();
  await student.getByRole('link', { name: 'To its plan' }).click();
  await expect(toTheEasel(student)).toBeVisible();
  return student;
}

const question = (page: Page) => page.getByRole('region', { name: 'Whose paints' });

/** The teacher's paints the student has not, as she is told. */
async function missingPaints(page: Page): Promise<string[]> {
  const told = /You have no (.+?)\./;
  await expect(question(page)).toContainText(told);
  const [, list = ''] = told.exec(await question(page).innerText()) ?? [];
  return list.split(/, | or /);
}

/** What she is to squeeze out, by the screen of paints. */
async function paintsOf(page: Page): Promise<string> {
  await page.getByRole('link', { name: 'Paints', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Other choices' })).toBeVisible(); // all is worked out
  return screen(page, 'paints').getByRole('region', { name: 'Chosen paints' }).innerText();
}

async function withOwnPaints(student: Page): Promise<void> {
  const missing = await missingPaints(student);
  const kept = await keptRows(student);
  expect(kept.plans).toBe(1); // nothing is planned before she has answered
  expect(await faultsAtEverySize(student, 'plan', 'handed-on')).toEqual([]);
  await question(student).getByRole('button', { name: 'Paint it with my paints' }).click();
  await expect(question(student)).toHaveCount(0);
  await student.getByText('Your paints, not the teacher’s').click();
  const said = student.locator('details[open] li');
  await expect(said.first()).toHaveText(/^The values are the same/);
  expect(await faultsAtEverySize(student, 'plan', 'handed-on-own-paints')).toEqual([]);
  for (const name of missing) {
    const itsOwn = new RegExp(`^${name}: (your|you have nothing near it)`, 'i');
    await expect(said.filter({ hasText: itsOwn })).toHaveCount(1);
  }
  const paints = (await paintsOf(student)).toLowerCase();
  for (const name of missing) expect(paints).not.toContain(name);
  expect((await keptRows(student)).plans).toBe(2); // the teacher's stays, to be compared with
  await student.context().close();
}

/** They are kept, though they are not ticked. */
async function withTeachersPaints(student: Page): Promise<void> {
  const missing = await missingPaints(student);
  await question(student).getByRole('button', { name: 'Keep the teacher’s paints' }).click();
  await expect(question(student)).toHaveCount(0);
  await expect(student.getByText('With the teacher’s paints.')).toBeVisible();
  const paints = await paintsOf(student);
  for (const name of missing) expect(paints.toLowerCase()).toContain(name);
  expect(paints).toContain('not all in your box');
  await student.context().close();
}

test('a teacher’s plan is painted with a student’s own paints, and what differs is said; another keeps the teacher’s', async ({
  page,
  browser,
  host,
  folder,
}) => {
  const file = await copyOfTeachers(page, folder);
  await withOwnPaints(await studentWith(file, browser, host.url));
  await withTeachersPaints(await studentWith(file, browser, host.url));
});
