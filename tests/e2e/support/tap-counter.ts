import type { Locator } from '@playwright/test';

export interface TapCounter {
  readonly taps: number;
  /** A finger on the middle of it; fails where it can't be seen or is covered. */
  tap(target: Locator): Promise<void>;
  /** A tap outside the page, as in the device's own photo chooser. */
  outside(): void;
}

export function tapCounter(): TapCounter {
  let taps = 0;
  return {
    get taps() {
      return taps;
    },
    async tap(target) {
      taps++;
      await target.tap();
    },
    outside() {
      taps++;
    },
  };
}
