import { join, resolve } from 'node:path';
import { defineConfig } from '@playwright/test';
import usual from '../playwright.config.ts';

const top = resolve(import.meta.dirname, '..', '..');

/** `npm run soak`: what takes minutes and is therefore no part of `npm test`. */
export default defineConfig(usual, {
  testDir: import.meta.dirname,
  projects: [
    { name: 'planned', testDir: join(top, 'tests/e2e') },
    { name: 'walks', testMatch: '*.soak.ts' },
  ],
  outputDir: join(top, 'test-results/soak'),
  workers: 1,
  timeout: 30 * 60_000,
  globalTimeout: 0,
  reporter: 'list',
});
