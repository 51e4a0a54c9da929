import { expect, type Page } from '@playwright/test';
import { ghostTapMs } from '../../../app/core/session/fold-session.ts';
import { savedWord, screen } from './walk.ts';

export interface EaselPlace {
  readonly n: number;
  readonly of: number;
  readonly title: string;
}

/** Where the easel stands, from its heading '4 of 12: First wash'. */
export async function easelPlace(page: Page): Promise<EaselPlace> {
  const words = await screen(page, 'easel').getByRole('heading', { level: 1 }).innerText();
  const found = /^(\d+) of (\d+): (.+)$/.exec(words);
  if (!found) throw new Error(`The easel's heading reads '${words}'.`);
  return { n: Number(found[1]), of: Number(found[2]), title: String(found[3]) };
}

export const easelButton = (page: Page, name: string) =>
  screen(page, 'easel').getByRole('button', { name, exact: true });

/** The one large button, whatever it says now. */
export const mainButton = (page: Page) =>
  screen(page, 'easel').getByRole('button', {
    name: /^(Start|Done|Ready to paint|It is bone dry|Finish|Go on)$/,
  });

const hurried = new WeakSet<Page>();

/** From here on the page's clock is driven: what a person would wait for is skipped. Before `goto`. */
export async function driveClock(page: Page, time?: Date): Promise<void> {
  await page.clock.install(time && { time });
  hurried.add(page);
}

/** Driven where the clock is driven, else waited for. */
export const passTime = (page: Page, ms: number): Promise<void> =>
  hurried.has(page) ? page.clock.fastForward(ms) : page.waitForTimeout(ms);

/** So long that the next tap does not count as a wet finger's second. */
export const afterTap = (page: Page): Promise<void> => passTime(page, ghostTapMs + 50);

/** Presses the large button as a person does: not so soon again that it counts as a wet finger. */
export async function pressOn(page: Page): Promise<string> {
  await afterTap(page);
  const word = await mainButton(page).innerText();
  await mainButton(page).click();
  await expect(savedWord(page)).toHaveText('saved');
  return word;
}

/** Presses on until step `n` stands. */
export async function goToStep(page: Page, n: number): Promise<void> {
  while ((await easelPlace(page)).n < n) await pressOn(page);
}

/** Presses on until a wash dries; answers where that is. */
export async function goToDrying(page: Page): Promise<EaselPlace> {
  for (;;) {
    if (await easelButton(page, 'It is bone dry').isVisible()) return easelPlace(page);
    await pressOn(page);
  }
}

/** A clock face '1:17:00' or '7:30' in seconds. */
export function faceSeconds(face: string): number {
  return face.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
}

/** The easel's clock in seconds: to the earliest end (0 once past), and to the latest; a wait shows them after a touch. */
export async function clockSeconds(page: Page): Promise<{ low: number; most: number }> {
  const folded = page.getByTestId('clock').locator('button[aria-expanded=false]');
  if (await folded.isVisible()) await folded.click();
  const words = await page.getByTestId('clock').innerText();
  const found = /(\d+:[\d:]+)\s+(?:to (\d+:[\d:]+)|at the most|just over|over by)/.exec(words);
  if (!found?.[1]) throw new Error(`The clock shows no figure: '${words}'.`);
  return found[2]
    ? { low: faceSeconds(found[1]), most: faceSeconds(found[2]) }
    : { low: 0, most: faceSeconds(found[1]) };
}
