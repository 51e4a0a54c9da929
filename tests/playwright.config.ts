import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig, type LaunchOptions } from '@playwright/test';
import { launchOptions } from './support/chromium.mjs';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..');

export default defineConfig({
  testDir: join(top, 'tests/e2e'),
  outputDir: join(top, 'test-results/e2e'), // emptied by playwright at each start
  fullyParallel: true,
  workers: 2,
  timeout: 60_000,
  expect: { timeout: 20_000 }, // an update takes 3 to 5 s, a first search among all paints as long
  forbidOnly: !!process.env.CI,
  reporter: [['list'], ['json', { outputFile: join(top, 'test-results/e2e.json') }]],
  globalSetup: join(top, 'tests/support/e2e-setup.ts'),
  use: {
    browserName: 'chromium',
    viewport: { width: 412, height: 915 },
    hasTouch: true,
    isMobile: true,
    // Keeping the whole app anew takes a second a test: allowed where it is what is tested.
    serviceWorkers: 'block',
    launchOptions: launchOptions() as LaunchOptions,
  },
});
