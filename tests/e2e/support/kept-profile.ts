import { join } from 'node:path';
import { type BrowserContext, chromium, type LaunchOptions } from '@playwright/test';
import { launchOptions, walkArgs } from '../../support/chromium.mjs';
import { boxes, withBox } from './few-paints.ts';

type ProfileOptions = NonNullable<Parameters<typeof chromium.launchPersistentContext>[1]>;

/**
 * Leads nowhere. A whole browser also asks its maker's services on its own account, so the trap of
 * the other tests could not tell what a page asked for; what pages ask for the guard still sees.
 */
const deadEnd = { server: 'http://127.0.0.1:9', bypass: '127.0.0.1' };

/**
 * A browser of its own whose data outlives it: open the same folder again and all is there. Its pages
 * are not guarded until `guarded.watch(context)`. `args` are added to the usual ones.
 */
export async function openKeptProfile(
  folder: string,
  { args = [], ...options }: ProfileOptions = {},
): Promise<BrowserContext> {
  const context = await chromium.launchPersistentContext(join(folder, 'profile'), {
    ...(launchOptions([...walkArgs, ...args]) as LaunchOptions),
    viewport: { width: 412, height: 915 },
    hasTouch: true,
    isMobile: true,
    proxy: deadEnd,
    ...options,
  });
  await withBox(context, boxes.few);
  return context;
}

/** How to kill the whole browser as the system does when memory is short, at once: SIGKILL, no farewell. */
export async function killerOf(context: BrowserContext): Promise<() => Promise<void>> {
  const browser = context.browser();
  if (!browser) throw new Error('This context has no browser of its own.');
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const pid = processInfo.find((process) => process.type === 'browser')?.id;
  if (!pid) throw new Error('The browser process was not found.');
  return async () => {
    const gone = new Promise<void>((closed) => context.once('close', () => closed()));
    process.kill(pid, 'SIGKILL');
    await gone;
  };
}

export const killBrowser = async (context: BrowserContext): Promise<void> =>
  (await killerOf(context))();
