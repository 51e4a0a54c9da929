import type { Page } from '@playwright/test';
import { ghostTapMs } from '../../app/core/session/fold-session.ts';
import { expect, test } from '../e2e/support/app-page.ts';
import { mainButton, pressOn } from '../e2e/support/easel-walk.ts';
import { smallPhoto } from '../e2e/support/fixture-file.ts';
import { killBrowser, openKeptProfile } from '../e2e/support/kept-profile.ts';
import { easelWith, prompt, savedWord } from '../e2e/support/walk.ts';
import { seeded } from '../support/seeded.ts';
import { clockEdge } from './clock-edge.ts';
import { keptEvents } from './kept-events.ts';

/** So many kills (own). */
const kills = 30;

/** Where the session has come to its end the same address opens another one. */
async function pressOrBeginAnew(page: Page, easel: string): Promise<void> {
  if (await mainButton(page).isVisible()) await pressOn(page);
  else {
    await page.goto('about:blank');
    await page.goto(easel);
    await expect(prompt(page)).toBeVisible();
    await expect(savedWord(page)).toHaveText('saved');
  }
}

test(`${kills} kills at random moments: nothing acknowledged is lost, the clock is right`, async ({
  folder,
  host,
  guarded,
}) => {
  const random = seeded(20310329);
  let context = await openKeptProfile(folder);
  await guarded.watch(context);
  let page = context.pages()[0] ?? (await context.newPage());
  await page.goto(host.url);
  await easelWith(page, smallPhoto);
  const easel = page.url();
  let timed = 0;
  let worst = 0;
  let acknowledgedLast = 0;
  for (let kill = 1; kill <= kills; kill++) {
    for (let press = Math.floor(random() * 3); press >= 0; press--)
      await pressOrBeginAnew(page, easel);
    const acknowledged = await keptEvents(page);
    const before = await clockEdge(page);
    // A press right after the last one counts as a wet finger's second and is not taken.
    await page.waitForTimeout(ghostTapMs + 50 + random() * 1500);
    const inTheAct = random() < 0.5 && (await mainButton(page).isVisible());
    let saidSaved = false;
    if (inTheAct) {
      await mainButton(page).click();
      // Until the next frame the word is still that of the line before.
      await page.evaluate(() => new Promise(requestAnimationFrame));
      await page.waitForTimeout(random() * 60);
      saidSaved = (await savedWord(page).textContent()) === 'saved';
    }
    await killBrowser(context);

    context = await openKeptProfile(folder);
    await guarded.watch(context);
    page = context.pages()[0] ?? (await context.newPage());
    await page.goto(easel);
    await expect(prompt(page)).toBeVisible();
    const kept = await keptEvents(page);
    expect(kept, `kill ${kill}`).toEqual(expect.arrayContaining(acknowledged));
    if (saidSaved) {
      acknowledgedLast++;
      expect(kept.length, `kill ${kill}, said saved`).toBeGreaterThan(acknowledged.length);
    }
    console.log(
      `kill ${kill}: ${kept.length} lines kept${saidSaved ? ', the last one as said' : ''}`,
    );
    if (inTheAct || !before) continue;
    const after = await clockEdge(page);
    if (!after) continue;
    const off = before.most - after.most - (after.wallMs - before.wallMs) / 1000;
    timed++;
    worst = Math.max(worst, Math.abs(off));
    expect(Math.abs(off), `kill ${kill}, clock off by ${off} s`).toBeLessThan(1);
  }
  console.log(
    `${kills} kills; ${acknowledgedLast} right after 'saved'; ${timed} clocks compared, worst ${worst.toFixed(2)} s off`,
  );
  expect(timed).toBeGreaterThan(4);
  await context.close();
});
