import type { Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { afterTap, driveClock, easelPlace, mainButton } from './support/easel-walk.ts';
import { smallExample } from './support/fixture-file.ts';
import { readyOffline } from './support/ready-offline.ts';
import { shownPixels } from './support/shown-pixels.ts';
import { planFor, prompt, savedWord, screen, toTheEasel } from './support/walk.ts';

test.use({ serviceWorkers: 'allow' });

interface Driven {
  readonly n: number;
  readonly title: string;
  readonly minutes: number;
  /** Nothing presses while she gets ready, or looks at the end: no time is taken. */
  readonly way: 'gets ready' | 'paints' | 'waits';
}

const wayBy = (word: string): Driven['way'] =>
  word === 'It is bone dry'
    ? 'waits'
    : /^(Done|Ready to paint|Finish)$/.test(word)
      ? 'gets ready'
      : 'paints';

/** Paints the whole plan, each step in a time of its own; the clock is driven, not waited for. */
async function paintThrough(page: Page): Promise<Driven[]> {
  const driven: Driven[] = [];
  for (;;) {
    const { n, of, title } = await easelPlace(page);
    expect(n).toBe(driven.length + 1);
    await expect(prompt(page)).toHaveText(/\w{3}.*\./);
    const way = wayBy(await mainButton(page).innerText());
    const minutes = way === 'waits' ? 40 + n : 3 + n;
    await afterTap(page);
    if (way === 'paints') {
      await mainButton(page).click();
      await expect(mainButton(page)).toHaveText('Done');
    }
    await page.clock.fastForward(minutes * 60_000);
    await mainButton(page).click();
    await expect(savedWord(page)).toHaveText('saved');
    driven.push({ n, title, minutes, way });
    if (n === of) return driven;
  }
}

async function openFold(page: Page, name: string): Promise<void> {
  const fold = screen(page, 'record').locator('details', {
    has: page.getByRole('heading', { name, exact: true }),
  });
  if ((await fold.getAttribute('open')) === null) await fold.locator('summary').click();
}

async function recordRows(page: Page): Promise<string[][]> {
  await openFold(page, 'Times');
  const rows = screen(page, 'record').locator('table').first().locator('tbody tr');
  await expect(rows.first()).toBeVisible();
  return rows.evaluateAll((found) =>
    found.map((row) => [...row.querySelectorAll('th, td')].map((cell) => cell.textContent ?? '')),
  );
}

async function expectRecord(page: Page, driven: readonly Driven[]): Promise<void> {
  expect(
    (await recordRows(page)).map(([step, , painted, waited]) => [step, painted, waited]),
  ).toEqual(
    driven.map(({ n, title, minutes, way }) => [
      `${n}. ${title}`,
      way === 'paints' ? `${minutes} min` : '–',
      way === 'waits' ? `${minutes} min` : '–',
    ]),
  );
  // A drying check is planned by what the wash before it needs to dry, not by the look at it.
  for (const [step, planned] of await recordRows(page))
    if (step?.endsWith('Drying check')) expect(planned, step).toMatch(/^(?!1–2 min).*\d min$/);
  const total = driven.reduce((sum, { minutes }) => sum + minutes, 0);
  const words = await screen(page, 'record')
    .getByText(/^Started .*, finished in/)
    .innerText();
  const [, hours = 0, minutes] = /finished in (?:(\d+) h )?(\d+) min\.$/.exec(words) ?? [];
  expect(Math.abs(60 * Number(hours) + Number(minutes) - total), words).toBeLessThanOrEqual(1);
  await openFold(page, 'Mixes');
  const mixes = screen(page, 'record').locator('details[open]').getByRole('listitem');
  expect(await mixes.count()).toBeGreaterThan(2);
  for (const mix of await mixes.allInnerTexts())
    expect(mix).toMatch(/^Wash \d, [A-Z]: .+, (tea|coffee|milk|cream|butter)$/);
}

/** Every step of the plan says all that is needed to carry it out. */
async function expectWholeSteps(page: Page): Promise<void> {
  const steps = screen(page, 'plan').locator('ol button');
  const card = screen(page, 'plan').getByRole('article');
  const count = await steps.count();
  expect(count).toBeGreaterThan(6);
  let washes = 0;
  let sheetBefore = 255;
  for (let i = 0; i < count; i++) {
    await steps.nth(i).click();
    const title = await card.getByRole('heading').innerText();
    const short = await card.innerText();
    // What to lay out and what to squeeze are lists.
    if (!/prepare|puddles/i.test(title))
      expect(short.split(/\s+/).length, `${title}: words before the fold`).toBeLessThan(130);
    await card.locator('> details > summary').click(); // what it is called tells what is behind it
    const words = await card.innerText();
    expect(words, title).toMatch(/^Paper\n.*(bone dry|almost dry|damp|satin|shiny|flooded): \w+/m);
    const dry = title.endsWith('Drying check');
    if (!dry) expect(short, title).toMatch(/^Paper: .* Takes \d+(–\u2060\d+)? min/m);
    await page.getByRole('button', { name: 'After this step' }).click();
    if (!/wash|darks/i.test(title) || /prepare|puddles/i.test(title)) continue;
    washes++;
    expect(words, title).toMatch(/^For\n.*\(value \d\.\d\)/m);
    expect(words, title).toContain('0 black');
    expect(words, title).toContain('10 white');
    expect(words, title).toMatch(/^How\n(wet on dry|wet-in-wet|glaze|dry brush)$/m);
    expect(words, title).toMatch(
      /^Dries\nshine gone after [½\d].* min, bone dry after \d.* min: looks like untouched paper/m,
    );
    expect(words, title).toMatch(
      /(tea|coffee|milk|cream|butter) for the .+\n?dries to value \d\.\d/,
    );
    const green = async () => (await shownPixels(page)).green;
    await expect.poll(green, `${title}: the sheet gets darker`).toBeLessThan(sheetBefore);
    sheetBefore = await green();
    await page.getByRole('button', { name: 'Photo', exact: true }).click();
    const reference = await shownPixels(page);
    await page.getByRole('button', { name: 'Where', exact: true }).click();
    await expect
      .poll(() => shownPixels(page), `${title}: what it leaves is dimmed`)
      .not.toEqual(reference);
  }
  expect(washes).toBeGreaterThanOrEqual(2);
}

// With the host there, and by keys alone, the same way is walked in keyboard.spec.ts.
test('the whole job from a photo to its record, the host gone', async ({ page, host }) => {
  await driveClock(page);
  await page.goto('./');
  await readyOffline(page);
  await host.close();
  await page.reload();
  await planFor(page, await smallExample());
  await expectWholeSteps(page);
  await toTheEasel(page).click();
  await expect(prompt(page)).toBeVisible();
  const driven = await paintThrough(page);
  await page.getByRole('link', { name: 'See the record' }).click();
  await expectRecord(page, driven);
  await page.reload();
  await expectRecord(page, driven);
  await page.getByRole('link', { name: 'Paintings' }).click();
  const paintings = page.getByRole('region', { name: 'Paintings' });
  await expect(paintings.getByRole('listitem')).toHaveCount(1);
  await expect(paintings).toContainText(/Seed heads\s*painted/);
});
