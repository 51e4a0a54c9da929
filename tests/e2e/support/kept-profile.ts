import { join } from 'node:path';
import { type BrowserContext, chromium, type LaunchOptions } from '@playwright/test';
import { chromiumArgs, launchOptions } from '../../support/chromium.mjs';

/** A browser of its own whose data outlives it: open the same folder again and all is there. */
export function openKeptProfile(folder: string, extraArgs: string[] = []): Promise<BrowserContext> {
  return chromium.launchPersistentContext(join(folder, 'profile'), {
    ...(launchOptions() as LaunchOptions),
    args: [...chromiumArgs, ...extraArgs],
    viewport: { width: 412, height: 915 },
    hasTouch: true,
    isMobile: true,
  });
}

/** Kills the whole browser as the system does when memory is short: SIGKILL, no farewell. */
export async function killBrowser(context: BrowserContext): Promise<void> {
  const browser = context.browser();
  if (!browser) throw new Error('This context has no browser of its own.');
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const pid = processInfo.find((process) => process.type === 'browser')?.id;
  if (!pid) throw new Error('The browser process was not found.');
  const gone = new Promise<void>((closed) => context.once('close', () => closed()));
  process.kill(pid, 'SIGKILL');
  await gone;
}
