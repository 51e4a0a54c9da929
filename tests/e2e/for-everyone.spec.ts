import type { Locator, Page } from '@playwright/test';
import { expect, test } from './support/app-page.ts';
import { driveClock, easelButton, easelPlace, goToDrying, pressOn } from './support/easel-walk.ts';
import { easelOf, easelOfSmallPhoto, planOf } from './support/planned-painting.ts';
import { prompt, screen, toTheEasel, toTheWashes } from './support/walk.ts';

/** Grounds of what is chosen and of what is not, of all that can be chosen on the page. */
const grounds = (page: Page): Promise<{ chosen: string[]; others: string[] }> =>
  page.evaluate(() => {
    const groundOf = (element: Element): string => getComputedStyle(element).backgroundColor;
    const all = [...document.querySelectorAll('main [aria-pressed]')].filter((each) =>
      each.checkVisibility(),
    );
    const isChosen = (each: Element): boolean => each.getAttribute('aria-pressed') === 'true';
    return {
      chosen: all.filter(isChosen).map(groundOf),
      others: all.filter((each) => !isChosen(each)).map(groundOf),
    };
  });

async function expectChosenSeen(page: Page, where: string): Promise<void> {
  const { chosen, others } = await grounds(page);
  expect(chosen.length, where).toBeGreaterThan(0);
  expect(others.length, where).toBeGreaterThan(0);
  for (const ground of chosen) expect(others, `${where}: a chosen one`).not.toContain(ground);
}

// Source: W3C, WCAG 2.2, 1.4.1 and 1.4.11; CSS Color Adjustment 1, 3 (forced colours).
test('with colours of her own system what is chosen is seen', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await page.goto('./');
  await planOf(page, 'small photo');
  await expectChosenSeen(page, 'plan');
  await page.getByRole('link', { name: 'Values', exact: true }).click();
  await expect(toTheWashes(page)).toBeVisible();
  await expectChosenSeen(page, 'study');
  await toTheWashes(page).click();
  await toTheEasel(page).click();
  await expect(prompt(page)).toBeVisible();
  await expectChosenSeen(page, 'easel');
});

test('scrollbars are of the wall, not white', async ({ page }) => {
  await page.goto('./');
  const [thumb, track] = await page.evaluate(() => {
    const { scrollbarColor } = getComputedStyle(document.documentElement);
    return scrollbarColor.match(/rgb\([^)]*\)/g) ?? [];
  });
  for (const colour of [thumb, track]) {
    const [red, green, blue] = (colour?.match(/\d+/g) ?? []).map(Number);
    expect([green, blue], colour).toEqual([red, red]);
    expect(red, colour).toBeLessThan(220);
  }
});

/** Of an element that was brought into sight, the part that really is. */
async function partInSight(of: Locator): Promise<number> {
  await of.scrollIntoViewIfNeeded();
  return of.evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    let seen = 0;
    for (let row = 0; row < 8; row++) {
      const hit = document.elementFromPoint(left + width / 2, top + ((row + 0.5) / 8) * height);
      if (hit && element.contains(hit)) seen++;
    }
    return seen / 8;
  });
}

// Source: W3C, WCAG 2.2, 1.4.10 Reflow: 320 CSS px wide, 256 high, is 1280 x 1024 at 400 %.
test.describe('at 320 x 256', () => {
  test.use({ viewport: { width: 320, height: 256 }, isMobile: false });
  test('the easel can be read and pressed, nothing covers what is scrolled to', async ({
    page,
  }) => {
    await driveClock(page);
    await page.goto('./');
    await easelOfSmallPhoto(page);
    expect(await partInSight(prompt(page))).toBe(1);
    await pressOn(page);
    await goToDrying(page);
    expect(await partInSight(prompt(page))).toBe(1);
    expect(await partInSight(page.getByTestId('clock'))).toBeGreaterThanOrEqual(0.75);
    for (const name of ['Let the screen rest', 'Still wet', 'Pause', 'More', 'It is bone dry'])
      expect(await partInSight(easelButton(page, name)), name).toBe(1);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
    await easelButton(page, 'Let the screen rest').click();
    const face = page.getByTestId('resting');
    await expect(face).toBeVisible();
    expect(await face.evaluate((each) => each.scrollWidth)).toBeLessThanOrEqual(320);
    await face.getByRole('button').click();
    await expect(screen(page, 'easel')).toBeVisible();
  });
});

// This project's own sizes (a phone upright, a smaller one, and on its side). Source of the 200 %: W3C, WCAG 2.2, 1.4.4.
for (const [width, height] of [
  [390, 844],
  [360, 740],
  [844, 390],
] as const)
  test.describe(`text at 200 % at ${width} x ${height}`, () => {
    test.use({ viewport: { width, height }, isMobile: false });
    test('at the easel picture, sentence, running clock and puddles are in sight without scrolling', async ({
      page,
    }) => {
      await driveClock(page);
      await page.goto('./');
      await easelOf(page, 'small example');
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      while ((await easelPlace(page)).title !== 'First wash') await pressOn(page);
      await pressOn(page); // the brush is on the paper
      await expectInSight(page, ['picture', 'prompt', 'clock', 'puddle-row']);
      await goToDrying(page);
      await expectInSight(page, ['picture', 'prompt', 'clock']);
      const actions = screen(page, 'easel').getByRole('region', { name: 'Actions' });
      const rows = await actions.getByRole('button').evaluateAll((all) =>
        all.map((each) => {
          const { left, right, bottom } = each.getBoundingClientRect();
          return { left, right, bottom, cut: each.scrollWidth > each.clientWidth };
        }),
      );
      for (const { left, right, bottom, cut } of rows) {
        expect([left >= 0, right <= width, bottom <= height, cut]).toEqual([
          true,
          true,
          true,
          false,
        ]);
      }
    });
  });

/** What bears these names lies in the window, over the actions and not under the head, before anything is scrolled. */
async function expectInSight(page: Page, ids: readonly string[]): Promise<void> {
  await page.evaluate(() => scrollTo(0, 0));
  const { top, free, found } = await page.evaluate((names) => {
    const box = (selector: string) => {
      const {
        top = Number.NaN,
        bottom = Number.NaN,
        height = 0,
      } = document.querySelector(selector)?.getBoundingClientRect() ?? {};
      return { top, bottom, height };
    };
    return {
      top: box('[data-screen=easel] > header').bottom,
      free: box('[aria-label="Actions"]').top,
      found: names.map((name) => box(`[data-testid="${name}"]`)),
    };
  }, ids);
  for (const [i, { top: from, bottom, height }] of found.entries()) {
    expect(height, ids[i]).toBeGreaterThan(24);
    expect(from, ids[i]).toBeGreaterThanOrEqual(top - 1);
    expect(bottom, ids[i]).toBeLessThanOrEqual(free + 1);
  }
}
