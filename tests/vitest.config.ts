import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { launchOptions } from './support/chromium.mjs';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..');

export default defineConfig({
  root: top,
  // Found in mid-run otherwise, with a reload and a second copy of preact.
  optimizeDeps: {
    include: [
      'preact',
      'preact/hooks',
      'preact/jsx-runtime',
      'preact/jsx-dev-runtime',
      '@preact/signals',
      'comlink',
    ],
  },
  define: { __BUILD__: '"test"' },
  test: {
    maxWorkers: 2, // else one of two cores stands idle
    reporters: ['default', ['json', { outputFile: resolve(top, 'test-results/unit.json') }]],
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          environment: 'node',
          isolate: false, // pure functions: what one file has warmed up another may use
          testTimeout: 30_000, // two slow cores, and others busy on them
          include: ['tests/unit/**/*.test.{ts,tsx}'],
        },
      },
      {
        extends: true,
        test: {
          name: 'chromium',
          isolate: false, // every file brings up and leaves its own; the modules are loaded once
          testTimeout: 30_000,
          include: ['tests/browser/**/*.test.{ts,tsx}'],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: launchOptions() }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
