import type { Page } from '@playwright/test';
import { faceSeconds } from '../e2e/support/easel-walk.ts';

export interface ClockEdge {
  /** The longer of the figures shown, seconds. */
  readonly most: number;
  /** Wall time of the page in the moment the figure changed, ms. */
  readonly wallMs: number;
}

/** The easel's clock in the very moment its figure changes; null where none runs down. */
export async function clockEdge(page: Page): Promise<ClockEdge | null> {
  const seen = await page.evaluate(
    () =>
      new Promise<{ words: string; wallMs: number } | null>((resolve) => {
        const clock = document.querySelector<HTMLElement>('[data-testid=clock]');
        if (!clock) return resolve(null);
        const tooLong = setTimeout(() => resolve(null), 2500);
        const observer = new MutationObserver(() => {
          clearTimeout(tooLong);
          observer.disconnect();
          resolve({ words: clock.textContent ?? '', wallMs: Date.now() });
        });
        observer.observe(clock, { characterData: true, childList: true, subtree: true });
      }),
  );
  if (!seen) return null;
  const found = /(\d+:[\d:]+)(?:\s+to (\d+:[\d:]+)|\s+at the most)/.exec(seen.words);
  if (!found?.[1]) return null;
  return { most: faceSeconds(found[2] ?? found[1]), wallMs: seen.wallMs };
}
