import { join } from 'node:path';
import { chromium, type Locator, type Page } from '@playwright/test';
import { launchOptions } from '../support/chromium.mjs';
import { buildRelease } from '../support/e2e-setup.ts';
import { staticServer } from '../support/static-server.ts';
import { countOnScreen } from './count-on-screen.ts';

/** How a screen is come to: from which one, by a tap on what, and what stands there once it can be used. */
interface Way {
  readonly screen: string;
  readonly from: string | null;
  readonly tap?: (page: Page) => Locator;
  readonly ready: (page: Page) => Locator;
}

const linkEnding = (end: string) => (page: Page) => page.locator(`a[href$="${end}"]`).first();
const standing = (screen: string) => (page: Page) => page.locator(`main[data-screen="${screen}"]`);
const has = (screen: string, what: string) => (page: Page) =>
  standing(screen)(page).locator(what).first();

/** Screens of decisions are there once Undo is. */
const decided = (screen: string): Way => ({
  screen,
  from: 'look',
  tap: linkEnding(`/${screen}`),
  ready: (page) => standing(screen)(page).getByRole('button', { name: 'Undo' }),
});

const fromPlan = (screen: string, ready: Way['ready'] = standing(screen)): Way => ({
  screen,
  from: 'plan',
  tap: linkEnding(`/${screen}`),
  ready,
});

/** Every screen but those that need a camera, several photos or a finished painting. */
const ways: readonly Way[] = [
  {
    screen: 'start',
    from: null,
    ready: (page) => page.getByRole('button', { name: /The example/ }),
  },
  { screen: 'about', from: 'start', tap: linkEnding('/about'), ready: has('about', 'h2') },
  { screen: 'copies', from: 'about', tap: linkEnding('/copies'), ready: has('copies', 'button') },
  {
    screen: 'look',
    from: 'start',
    tap: (page) => page.getByRole('button', { name: /The example/ }),
    ready: (page) => page.getByRole('link', { name: 'Show me the washes' }),
  },
  decided('whites'),
  decided('edges'),
  decided('colours'),
  decided('hues'),
  decided('changes'),
  decided('subject'),
  {
    screen: 'sheet',
    from: 'look',
    tap: linkEnding('/sheet'),
    ready: (page) => page.getByTestId('cut-stage'),
  },
  {
    screen: 'plan',
    from: 'look',
    tap: linkEnding('/plan'),
    ready: (page) => page.getByRole('link', { name: 'To the easel' }),
  },
  fromPlan('paints', has('paints', 'section li')),
  {
    screen: 'box',
    from: 'paints',
    tap: linkEnding('/box'),
    ready: has('box', 'input[type=checkbox]'),
  },
  fromPlan('chart'),
  fromPlan('drawing'),
  fromPlan('plan-page'),
  fromPlan('easel', (page) => page.getByTestId('prompt')),
];

/** What folds are shut round a target: each costs a tap of its own. */
async function openRound(target: Locator): Promise<number> {
  const shut = target.locator('xpath=ancestor::details[not(@open)]');
  const count = await shut.count();
  for (let i = 0; i < count; i++) await shut.nth(0).locator('> summary').click();
  return count;
}

/** From the first screen along the ways to one of them, and how many taps that took. */
async function walkTo(page: Page, url: string, screen: string): Promise<number> {
  const way = ways.find((each) => each.screen === screen);
  if (!way) throw new Error(`There is no way to ${screen}.`);
  let taps = 0;
  if (way.from === null) await page.goto(url);
  else taps = await walkTo(page, url, way.from);
  if (way.tap) {
    const target = way.tap(page);
    await target.waitFor({ state: 'attached' });
    taps += 1 + (await openRound(target));
    await target.scrollIntoViewIfNeeded(); // as the panel is scrolled it comes up, and the target with it
    await target.click();
  }
  await way.ready(page).waitFor();
  return taps;
}

/** Nothing on the page has changed for so long, ms: what comes late is there. */
const stillFor = 1500;

const standsStill = (page: Page): Promise<void> =>
  page.evaluate(
    (ms) =>
      new Promise<void>((resolve) => {
        let timer = setTimeout(done, ms);
        const watch = new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(done, ms);
        });
        function done(): void {
          watch.disconnect();
          resolve();
        }
        watch.observe(document.body, { subtree: true, childList: true, characterData: true });
      }),
    stillFor,
  );

/**
 * Taps from the first screen, words and controls in the first view and on the whole screen, height against the
 * window, for every screen with the example on a phone of 390 x 844 px, nothing ticked in the box.
 */
export async function measureScreens(): Promise<void> {
  const folder = join(import.meta.dirname, '..', '..', 'test-results', 'build', 'measured');
  await buildRelease('measured', folder);
  const host = await staticServer(folder);
  const browser = await chromium.launch(launchOptions());
  const rows: Record<string, unknown>[] = [];
  try {
    for (const { screen } of ways) {
      const context = await browser.newContext({
        viewport: { width: 390, height: 844 },
        hasTouch: true,
        locale: 'en-GB',
        reducedMotion: 'reduce',
        serviceWorkers: 'block',
      });
      const page = await context.newPage();
      const taps = await walkTo(page, host.url, screen);
      await standsStill(page);
      rows.push({ screen, taps, ...(await page.evaluate(countOnScreen)) });
      await context.close();
    }
  } finally {
    await browser.close();
    await host.close();
  }
  console.log('\nScreens at 390 x 844 px: taps from the first screen, words and controls');
  console.table(rows);
}
