import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { CDPSession, Page } from '@playwright/test';
import { accessibilityFaults } from './accessibility.ts';
import { expect } from './app-page.ts';
import { layoutFaults } from './page-layout.ts';
import { type ScreenName, screen } from './walk.ts';

const top = join(import.meta.dirname, '..', '..', '..');
const shots = join(top, 'test-results', 'screens');
mkdirSync(shots, { recursive: true });

/** What is shown to others is the example as it is; sizes and words are the same with its small copy. */
export const forShow = Boolean(process.env.SHOTS || process.env.UPDATE);

/**
 * 48 px everywhere; what is pressed at the easel with wet hands 64, the pictures to choose from as wide at least. Back,
 * Pause and More are one slim row.
 */
const easelActions =
  '[data-screen=easel] > :last-child :is(button, a):not([data-slim] *, [data-slim])';
const easelViews = '[data-screen=easel] fieldset button';

async function smallEaselTargets(page: Page): Promise<string[]> {
  const sides = (selector: string, side: 'width' | 'height') =>
    page
      .locator(selector)
      .evaluateAll(
        (found, which) =>
          found.map(
            (each) => [each.textContent, each.getBoundingClientRect()[which], which] as const,
          ),
        side,
      );
  const boxes = [...(await sides(easelActions, 'height')), ...(await sides(easelViews, 'width'))];
  return boxes
    .filter(([, px]) => px < 63.5)
    .map(([name, px, side]) => `'${name}' at the easel has a ${side} of ${px.toFixed(0)} px`);
}

const desktop = { width: 1440, height: 900, touch: false };
const across = { width: 1180, height: 820, touch: false };
const upright = { width: 820, height: 1180, touch: true };
export const phone = { width: 390, height: 844, touch: true };
const sizes = [desktop, across, upright, phone] as const;
type Size = (typeof sizes)[number];

const devtoolsOf = new WeakMap<Page, CDPSession>();

/** Gives the page a size, and the finger or the mouse that goes with it (CSS `pointer` and `hover`). */
async function setSize(page: Page, size: Size): Promise<void> {
  const devtools = devtoolsOf.get(page) ?? (await page.context().newCDPSession(page));
  devtoolsOf.set(page, devtools);
  await devtools.send('Emulation.setTouchEmulationEnabled', { enabled: size.touch });
  await page.setViewportSize(size);
  await expect
    .poll(() => page.evaluate(() => matchMedia('(pointer: coarse)').matches))
    .toBe(size.touch);
}

/** With SHOTS=1 before the command every screen is kept as a picture, to be looked at. */
async function keepPicture(page: Page, name: string): Promise<void> {
  const path = join(shots, `${name}.png`);
  const isReadmes = process.env.UPDATE && name === 'easel-390-light';
  if (isReadmes)
    await screen(page, 'easel')
      .getByRole('region', { name: 'What to do' })
      .evaluate((panel) => panel.scrollTo(0, 0));
  if (process.env.SHOTS || isReadmes) await page.screenshot({ path });
  // The README shows what the app looks like: made here, so that it stays true.
  if (isReadmes) copyFileSync(path, join(top, '.github', 'easel.png'));
}

/** A page that was just given another size may still be moving: only what stays wrong is a fault. */
async function lastingFaults(page: Page, look: () => Promise<string[]>): Promise<string[]> {
  const frame = () => page.evaluate(() => new Promise<number>(requestAnimationFrame));
  await frame();
  await frame();
  let found = await look();
  for (let again = 0; again < 20 && found.length > 0; again++) {
    await page.waitForTimeout(100);
    found = await look();
  }
  return found;
}

/**
 * Faults of what stands on the page at one size. Words and roles are the same at many, so axe is asked at the
 * largest and the smallest; on the phone light, and dark for its colours.
 */
async function faultsAt(page: Page, size: Size, name: ScreenName, shown: string) {
  await setSize(page, size);
  await page.evaluate(() => scrollTo(0, 0)); // axe looks where the page stands
  const faults: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    const of = colorScheme === 'light' ? 'all' : 'contrast';
    const asked = size === phone || (size === desktop && of === 'all');
    if (!asked && !forShow) continue;
    await page.emulateMedia({ colorScheme });
    await keepPicture(page, `${shown}-${size.width}-${colorScheme}`);
    if (!asked) continue;
    const found = await accessibilityFaults(page, of);
    faults.push(...found.map((fault) => `${colorScheme}: ${fault}`));
  }
  faults.push(
    ...(await lastingFaults(page, async () => [
      ...(await layoutFaults(page, 48)),
      ...(name === 'easel' ? await smallEaselTargets(page) : []),
    ])),
  );
  return faults.map((fault) => `${shown}, ${size.width} px: ${fault}`);
}

/** With text at 200 % nothing is cut, covered or pushed off the side of a phone. */
async function faultsOfLargeText(page: Page, shown: string): Promise<string[]> {
  const textSize = (size: string): Promise<void> =>
    page.evaluate((value) => {
      document.documentElement.style.fontSize = value;
    }, size);
  await setSize(page, phone);
  await textSize('200%');
  await keepPicture(page, `${shown}-390-text-200`);
  const faults = await lastingFaults(page, () => layoutFaults(page, 48));
  await textSize('');
  return faults.map((fault) => `${shown}, text at 200 %: ${fault}`);
}

/**
 * Faults of a screen as it stands, in words, at every size: by mouse across and on a desktop, by touch upright, with
 * large text, and on a phone. `shown` names what is shown of it.
 */
export async function faultsAtEverySize(
  page: Page,
  name: ScreenName,
  shown: string,
): Promise<string[]> {
  const faults: string[] = [];
  await expect(screen(page, name)).toBeVisible();
  for (const size of sizes) {
    if (size === phone) faults.push(...(await faultsOfLargeText(page, shown)));
    faults.push(...(await faultsAt(page, size, name, shown)));
  }
  return faults;
}
