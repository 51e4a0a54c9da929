import { join } from 'node:path';
import { chromium, type Locator, type Page } from '@playwright/test';
import { ghostTapMs } from '../../app/core/session/fold-session.ts';
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

/** Where a screen is, once it was come to, and the taps that took from the first screen. */
interface Place {
  readonly address: string;
  readonly taps: number;
}

/**
 * Comes to a screen by the taps of its way. The screen before it is opened anew by its address, so that nothing is
 * read or planned twice: what was worked out on the way there is kept.
 */
async function comeTo(
  page: Page,
  { from, tap, ready }: Way,
  places: ReadonlyMap<string, Place>,
  start: string,
): Promise<Place> {
  const before = from === null ? null : places.get(from);
  if (before === undefined) throw new Error(`There is no way to ${from}.`);
  await page.goto('about:blank');
  await page.goto(before?.address ?? start);
  if (!before || !tap) {
    await ready(page).waitFor();
    return { address: page.url(), taps: 0 };
  }
  await readyAt(page, from);
  const target = tap(page);
  await target.waitFor({ state: 'attached' });
  const folds = await openRound(target);
  await target.scrollIntoViewIfNeeded(); // as the panel is scrolled it comes up, and the target with it
  await target.click();
  await ready(page).waitFor();
  return { address: page.url(), taps: before.taps + 1 + folds };
}

const readyAt = async (page: Page, screen: string | null): Promise<void> => {
  await ways
    .find((way) => way.screen === screen)
    ?.ready(page)
    .waitFor();
};

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

/** Words of every step of the plan before its fold is opened, the most first. */
async function wordsOfSteps(page: Page): Promise<{ step: string; words: number }[]> {
  const stages = page.locator('main[data-screen=plan] ol button');
  const found: { step: string; words: number }[] = [];
  for (let i = 0; i < (await stages.count()); i++) {
    await stages.nth(i).click();
    const card = page.locator('main[data-screen=plan] article');
    const words = (await card.innerText()).match(/\S*[\p{L}\p{N}]\S*/gu) ?? [];
    found.push({ step: await card.locator('h2').innerText(), words: words.length });
  }
  return found.sort((one, two) => two.words - one.words);
}

/** From the easel's first prompt to the first brush stroke: taps on the one large button until a clock runs. */
async function tapsToTheBrush(page: Page): Promise<number> {
  const easel = page.locator('main[data-screen=easel]');
  const pressed = easel.getByRole('button', { name: /^(Start|Done|Ready to paint)$/ });
  for (let taps = 1; taps <= mostTaps; taps++) {
    await page.waitForTimeout(ghostTapMs + 50); // sooner it would be a wet finger's second tap
    await pressed.click();
    if (await easel.getByTestId('clock').isVisible()) return taps;
  }
  throw new Error(`No clock runs after ${mostTaps} taps.`);
}

const mostTaps = 12;

/**
 * Taps from the first screen, words and controls in the first view and on the whole screen, height against the
 * window, for every screen with the example on a phone of 390 x 844 px, nothing ticked in the box. Then the words of
 * every step of the plan, and the taps to the first brush stroke.
 */
export async function measureScreens(): Promise<void> {
  const folder = join(import.meta.dirname, '..', '..', 'test-results', 'build', 'measured');
  await buildRelease('measured', folder);
  const host = await staticServer(folder);
  const browser = await chromium.launch(launchOptions());
  const places = new Map<string, Place>();
  try {
    const context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      locale: 'en-GB',
      reducedMotion: 'reduce',
      serviceWorkers: 'block',
    });
    const page = await context.newPage();
    page.setDefaultTimeout(0); // however slow the machine is
    console.log('Screens at 390 x 844 px: taps from the first screen, words and controls');
    for (const way of ways) {
      const place = await comeTo(page, way, places, host.url);
      places.set(way.screen, place);
      await standsStill(page);
      const count = await page.evaluate(countOnScreen);
      console.log(
        `  ${way.screen}: taps ${place.taps}, words in view ${count.wordsInView} of ${count.words}, controls in view ${count.controlsInView} of ${count.controls}, ${count.screens} screens high`,
      );
      if (way.screen === 'plan') {
        const [most, next] = await wordsOfSteps(page);
        console.log(
          `  words of a step before its fold: most ${most?.words} (${most?.step}), then ${next?.words} (${next?.step})`,
        );
      }
      if (way.screen === 'easel') {
        const toPrompt = place.taps;
        const toBrush = toPrompt + (await tapsToTheBrush(page));
        console.log(
          `  taps from the first screen to the first prompt ${toPrompt}, to the first brush stroke ${toBrush}; from the photo one less`,
        );
      }
    }
  } finally {
    await browser.close();
    await host.close();
  }
}
