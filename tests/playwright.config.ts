import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig, type LaunchOptions } from '@playwright/test';
import { launchOptions, walkArgs } from './support/chromium.mjs';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..');

export default defineConfig({
  testDir: join(top, 'tests/e2e'),
  outputDir: join(top, 'test-results/e2e'), // emptied by playwright at each start
  fullyParallel: true,
  workers: 2,
  // Limits only end what hangs: the longest walk takes some 50 s of one core, an update or a first search among all
  // paints 3 to 5 s; the unit tests run beside it, and something else may keep both cores busy.
  timeout: 600_000,
  expect: { timeout: 60_000 },
  globalTimeout: 60 * 60_000, // the whole run, should everything hang
  forbidOnly: !!process.env.CI,
  reporter: [['list'], ['json', { outputFile: join(top, 'test-results/e2e.json') }]],
  projects: [
    { name: 'planned', testMatch: '*.setup.ts' },
    { name: 'walks', dependencies: ['planned'] },
  ],
  globalSetup: join(top, 'tests/support/e2e-setup.ts'),
  use: {
    browserName: 'chromium',
    viewport: { width: 412, height: 915 },
    hasTouch: true,
    isMobile: true,
    // Keeping the whole app anew takes a second a test: allowed where it is what is tested.
    serviceWorkers: 'block',
    launchOptions: launchOptions(walkArgs) as LaunchOptions,
  },
});
