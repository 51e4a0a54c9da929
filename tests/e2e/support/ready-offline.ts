import { expect, type Page } from '@playwright/test';

/** Waits until the app says that it starts without a network. */
export async function readyOffline(page: Page): Promise<void> {
  await expect(page.locator('html')).toHaveAttribute('data-offline', 'ready');
}
