import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as later } from 'node:timers/promises';
import { expect, test } from '@playwright/test';
import { ghostTapMs } from '../../app/core/session/fold-session.ts';
import { caseFile } from '../e2e/support/fixture-file.ts';
import { releaseFolder } from '../e2e/support/release-folder.ts';
import { staticServer } from '../support/static-server.ts';
import { type Engine, missingFor, startEngine } from './drive-engine.ts';

/** Turned by its tag: 320 x 480 as stored, 480 x 320 upright. */
const turnedPhoto = caseFile('exif-orient-6.jpg');

const linkOf = (name: string): string => `//a[normalize-space()='${name}']`;
const mainButtonWords = [
  ...['Start', 'Done', 'Ready to paint', 'It is bone dry', 'Finish', 'Go on'],
];
const mainButton = `//main[@data-screen='easel']//button[${mainButtonWords
  .map((word) => `normalize-space()='${word}'`)
  .join(' or ')}]`;

/** So long a thing may take to come, ms: only ends what hangs. */
const limitMs = 300_000;

const wordsOn = (engine: Engine): Promise<string> =>
  engine.run<string>('return document.body?.innerText ?? ""').catch(() => '');

/** Polled until it holds; tells what was on the screen where it never does. */
async function until(engine: Engine, what: string, holds: () => Promise<boolean>): Promise<void> {
  const start = performance.now();
  let fault: unknown = '';
  const tried = (): Promise<boolean> =>
    holds().catch((error: unknown) => {
      fault = error;
      return false;
    });
  while (!(await tried())) {
    if (performance.now() - start > limitMs)
      throw new Error(
        `${what} did not come. ${fault} On the screen:\n${(await wordsOn(engine)).slice(0, 1500)}`,
      );
    await later(100);
  }
}

const pressed = (engine: Engine, xpath: string): Promise<void> =>
  until(engine, xpath, () => engine.press(xpath));

const onScreen = (engine: Engine, name: string): Promise<void> =>
  until(engine, `The screen '${name}'`, () =>
    engine.run<boolean>(
      'return document.querySelector("main")?.dataset.screen === arguments[0]',
      name,
    ),
  );

const headingAtEasel = (engine: Engine): Promise<string> =>
  engine.run<string>(
    'return document.querySelector("main[data-screen=easel] h1")?.textContent ?? ""',
  );

/** Answers when the page of before is gone. */
async function reload(engine: Engine): Promise<void> {
  await engine.run('window.before = true; setTimeout(() => location.reload())');
  await until(engine, 'The page anew', () =>
    engine.run<boolean>("return !('before' in window) && document.readyState === 'complete'"),
  );
}

/** Every step to its end; answers how many there were. */
async function paintThrough(engine: Engine): Promise<number> {
  await onScreen(engine, 'easel');
  let steps = 0;
  for (;;) {
    await until(engine, 'A step or the end', async () => {
      const words = await wordsOn(engine);
      return words.includes('See the record') || (await headingAtEasel(engine)) !== '';
    });
    if ((await wordsOn(engine)).includes('See the record')) return steps;
    steps = Number(/^\d+ of (\d+)/.exec(await headingAtEasel(engine))?.[1] ?? steps);
    await later(ghostTapMs + 50);
    await engine.press(mainButton);
    await until(engine, "The word 'saved', or the end", async () =>
      engine.run<boolean>(
        `const word = document.querySelector('main[data-screen=easel] header [role=status]');
         return !word || word.textContent === 'saved'`,
      ),
    );
  }
}

const planThrough = async (engine: Engine): Promise<void> => {
  await pressed(engine, linkOf('Show me the washes'));
  await pressed(engine, linkOf('To the easel'));
};

/** Faults the page told of, and whatever it asked for elsewhere. */
const strange = (engine: Engine): Promise<string[]> =>
  engine.run<string[]>(
    `return [
       ...[...document.querySelectorAll('[role=alert]')].map((each) => each.textContent).filter(Boolean),
       ...performance.getEntriesByType('resource').map(({ name }) => name)
         .filter((name) => !name.startsWith(location.origin) && !/^(blob|data):/.test(name)),
     ]`,
  );

for (const name of ['WebKit', 'Firefox'] as const)
  test(`${name}: example, plan, easel, record, an own photo, a reload, a start with the host gone`, async () => {
    const missing = missingFor[name]();
    test.skip(missing !== null, `${name} is not on this machine: ${missing}`);
    const folder = mkdtempSync(join(tmpdir(), 'firstwash-engine-'));
    const host = await staticServer(releaseFolder('v1'));
    const engine = await startEngine[name](folder);
    try {
      await engine.go(host.url);
      await pressed(engine, "//button[contains(., 'The example')]");
      await planThrough(engine);
      const steps = await paintThrough(engine);
      expect(steps).toBeGreaterThan(8); // (own): fewer would be no plan of the example
      expect(await strange(engine)).toEqual([]);
      await pressed(engine, linkOf('See the record'));
      await onScreen(engine, 'record');
      const told = /finished in .*? min\./;
      await until(engine, 'How long it took', async () => told.test(await wordsOn(engine)));
      const record = told.exec(await wordsOn(engine))?.[0];
      await reload(engine);
      await until(engine, 'The record as before', async () =>
        (await wordsOn(engine)).includes(String(record)),
      );

      await engine.go(`${host.url}#/`);
      await onScreen(engine, 'start');
      const photo = "//input[@type='file']";
      await until(engine, 'The way to an own photo', () => engine.type(photo, turnedPhoto));
      await planThrough(engine);
      await onScreen(engine, 'easel');
      // A photo this engine did not turn would be refused, or stand on end.
      await until(engine, 'The photo, upright', () =>
        engine.run<boolean>(
          `const picture = document.querySelector('main canvas');
           return picture !== null && picture.width > picture.height`,
        ),
      );
      await until(engine, 'Its first step', async () => /^1 of/.test(await headingAtEasel(engine)));
      expect(await strange(engine)).toEqual([]);
      await reload(engine);
      await until(engine, 'Its first step', async () => /^1 of/.test(await headingAtEasel(engine)));

      await until(engine, 'Ready without a connection', () =>
        engine.run<boolean>("return document.documentElement.dataset.offline === 'ready'"),
      );
      const before = host.seen.length;
      await host.close();
      await reload(engine);
      await until(engine, 'Its first step', async () => /^1 of/.test(await headingAtEasel(engine)));
      await engine.go(`${host.url}#/`);
      await onScreen(engine, 'start');
      await until(engine, 'Both paintings', () =>
        engine.run<boolean>("return /painted in/.test(document.querySelector('main').textContent)"),
      );
      expect(host.seen.length).toBe(before);
      console.log(
        `${engine.version}: ${steps} steps painted, ${record} An own photo planned and reloaded. Started with the host gone.`,
      );
    } finally {
      await engine.close();
      await host.close().catch(() => undefined);
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    }
  });
