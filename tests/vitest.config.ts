import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { assembly } from '../app/build/assembly.mjs';
import { launchOptions, testArgs } from './support/chromium.mjs';

/**
 * One limit for every test and hook, ms: it only ends what hangs. The longest takes some 30 s of one core, of which
 * walks and whatever else runs leave it a part. With RUNS=40 properties take as many times as long.
 */
const limitMs = 600_000 * Math.max(1, Number(process.env.RUNS ?? 1));
/** How long the page may take to show what is waited for, ms: so a red test says so well before its limit. */
const shownMs = 30_000;

const top = resolve(dirname(fileURLToPath(import.meta.url)), '..');

export default defineConfig({
  root: top,
  plugins: [assembly()],
  // Found in mid-run otherwise, with a reload and a second copy of preact.
  optimizeDeps: {
    include: [
      'preact',
      'preact/hooks',
      'preact/jsx-runtime',
      'preact/jsx-dev-runtime',
      '@preact/signals',
      'comlink',
      'valibot',
      '@zip.js/zip.js/lib/zip-core-custom.js',
    ],
  },
  define: {
    __CHANGES__: '["A change."]',
    'process.env.RUNS': JSON.stringify(process.env.RUNS ?? '1'), // pages have no environment
  },
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
          testTimeout: limitMs,
          hookTimeout: limitMs,
          expect: { poll: { timeout: shownMs } },
          include: ['tests/unit/**/*.test.{ts,tsx}'],
        },
      },
      {
        extends: true,
        test: {
          name: 'chromium',
          isolate: false, // every file brings up and leaves its own; the modules are loaded once
          testTimeout: limitMs,
          hookTimeout: limitMs,
          expect: { poll: { timeout: shownMs } },
          include: ['tests/browser/**/*.test.{ts,tsx}'],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: launchOptions(testArgs),
              actionTimeout: shownMs,
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
