import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, expect } from '@playwright/test';
import { type StaticServer, staticServer } from '../../support/static-server.ts';
import { boxes, withBox } from './few-paints.ts';
import { smallExample } from './fixture-file.ts';
import { type Guard, guard } from './guard.ts';
import { type OutsideTrap, outsideTrap } from './outside-trap.ts';
import { releaseFolder } from './release-folder.ts';

interface AppFixtures {
  /** The folder on the host the app lies in; `test.use({ prefix: '/deep/er/' })` changes it. */
  prefix: string;
  /** Her box: a few paints, quickly searched, such as ask for care, or all of them as for who has ticked none. */
  box: keyof typeof boxes | 'all';
  /** A plain static host with release v1 of the built app; its `url` is the `baseURL` too. */
  host: StaticServer;
  /**
   * The picture behind the example's button: a small copy, or as it is built. Always as it is built where a service
   * worker is let in, which checks every file's hash.
   */
  exampleSize: 'small' | 'whole';
  /** A folder for browser profiles and files, removed after the test. */
  folder: string;
  outside: OutsideTrap;
  /** On for every test, whether it asks for it or not. */
  guarded: Guard;
}

export const test = base.extend<AppFixtures>({
  prefix: ['/', { option: true }],
  box: ['few', { option: true }],
  exampleSize: ['small', { option: true }],
  host: async ({ prefix, exampleSize, serviceWorkers }, use) => {
    const host = await staticServer(releaseFolder('v1'), prefix);
    if (exampleSize === 'small' && serviceWorkers === 'block') {
      // By the host: a route of the browser's would stop every request, and shut its cache off.
      const { buffer } = await smallExample();
      host.answer = (path, response) => {
        const isExample = /^assets\/seed-heads-[^/]*\.jpg$/.test(path);
        if (isExample) response.writeHead(200, { 'Content-Type': 'image/jpeg' }).end(buffer);
        return isExample;
      };
    }
    await use(host);
    await host.close();
  },
  baseURL: async ({ host }, use) => use(host.url),
  // biome-ignore lint/correctness/noEmptyPattern: Playwright wants the pattern
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'firstwash-'));
    await use(folder);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  },
  // biome-ignore lint/correctness/noEmptyPattern: Playwright wants the pattern
  outside: async ({}, use) => {
    const trap = await outsideTrap();
    await use(trap);
    await trap.close();
  },
  proxy: async ({ outside }, use) => use(outside.proxy),
  guarded: [
    async ({ context, outside, box }, use) => {
      if (box !== 'all') await withBox(context, boxes[box]);
      const watching = guard();
      await watching.watch(context);
      await use(watching);
      expect(await watching.faults(), 'faults on the page').toEqual([]);
      expect(outside.caught, 'requests outside the own origin').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
